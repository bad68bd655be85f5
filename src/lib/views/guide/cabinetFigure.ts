import { across, area, circle, type Figure, label, line, rect, turned, upright } from '$lib/views/figure/figure.ts';
import type { GuideNumbers } from './numbers.ts';

/** A cabinet from the front, and another from the side whose baffle leans so that the rake can be seen. */
export function cabinetFigure({ project: { speaker }, mm, degrees }: GuideNumbers): Figure {
  const lean = 60;
  return {
    extent: [0, 0, 960, 520],
    says: 'A cabinet from the front and from the side: width, height, depth along the bottom, and how far the baffle leans back.',
    shapes: [
      rect('front', 'cabinet', [0, 0, 310, 480]),
      circle('tweeter', 'driver', [155, 365], 45),
      circle('woofer', 'driver', [155, 165], 105),
      circle('cone', 'driver', [155, 165], 45, { pen: 'narrow' }),
      area('side', 'cabinet', [
        [560, 0],
        [930, 0],
        [930, 480],
        [560 + lean, 480],
      ]),
      line(
        'plumb',
        'cabinet',
        [
          [560, 0],
          [560, 520],
        ],
        'centre',
      ),
      label('side-name', [770, 240], 'side'),
    ],
    dimensions: [
      across('width', [0, 0], [310, 0], -1, mm(speaker.width)),
      upright('height', [930, 0], [930, 480], 1, mm(speaker.height)),
      across('depth', [560, 0], [930, 0], -1, mm(speaker.depth)),
      turned('rake', [560, 0], Math.atan2(480, lean), Math.PI / 2, 330, degrees(speaker.baffleRake)),
    ],
  };
}
