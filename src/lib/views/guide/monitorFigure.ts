import { across, type Figure, label, line, rect, upright } from '$lib/views/figure/figure.ts';
import type { GuideNumbers } from './numbers.ts';

/** A screen from the front on the desk, and from above. */
export function monitorFigure({ layout: { monitors }, mm }: GuideNumbers): Figure {
  const [first] = monitors;
  return {
    extent: [-90, 0, 1900, 760],
    says: 'A screen from the front and from above: its width and height, its lower edge over the desk, and from the desk’s front edge to its face.',
    shapes: [
      rect('desk-front', 'desk', [0, 0, 960, 45]),
      rect('foot', 'monitor', [340, 45, 600, 75]),
      rect('stem', 'monitor', [445, 75, 495, 260]),
      rect('panel', 'monitor', [100, 250, 840, 720]),
      rect('glass', 'monitor', [125, 275, 815, 695], { pen: 'narrow' }),
      label('front', [470, 485], 'from the front'),
      rect('desk-above', 'desk', [1180, 100, 1860, 700]),
      line(
        'middle',
        'desk',
        [
          [1520, 60],
          [1520, 760],
        ],
        'centre',
      ),
      rect('panel-above', 'monitor', [1270, 530, 1770, 585]),
      label('above', [1660, 190], 'from above'),
    ],
    dimensions: [
      across('width', [100, 720], [840, 720], 1, mm(first?.width)),
      upright('height', [840, 250], [840, 720], 1, mm(first?.height), { base: 850 }),
      upright('bottom', [100, 45], [100, 250], -1, mm(first?.bottom), { base: 60 }),
      upright('face', [1330, 100], [1330, 530], -1, mm(first?.y), { base: 1400 }),
    ],
  };
}
