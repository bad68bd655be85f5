import { deskShape } from '$lib/project/deskShape.ts';
import { gapToWall, wayTo } from '$lib/project/wall.ts';
import { across, type Figure, label, line, rect, upright } from '$lib/views/figure/figure.ts';
import { floor } from '$lib/views/figure/person.ts';
import type { GuideNumbers } from './numbers.ts';

/** The desk from above with the wall behind it, and from the side on the floor. */
export function deskFigure({ layout: { desk, room }, mm }: GuideNumbers): Figure {
  const { extent, depth, points } = deskShape(desk);
  const wall = room.walls.find((one) => wayTo(one) === 'back');
  return {
    extent: [0, -45, 1780, 900],
    says: 'A desk from above and from the side: its width, its depth, the gap behind it, and its height over the floor.',
    shapes: [
      rect('wall', 'wall', [-40, 850, 1020, 900], { hatched: true, filled: false, pen: 'narrow' }),
      rect('top', 'desk', [0, 140, 980, 700]),
      line(
        'middle',
        'desk',
        [
          [490, 110],
          [490, 730],
        ],
        'centre',
      ),
      label('wall-name', [880, 775], 'wall'),
      label('top-name', [490, 420], 'from above'),
      ...floor(1220, 1780),
      rect('board', 'desk', [1300, 560, 1740, 605]),
      rect('leg', 'desk', [1340, 0, 1380, 560]),
      rect('other-leg', 'desk', [1660, 0, 1700, 560]),
      label('side-name', [1520, 300], 'side'),
    ],
    dimensions: [
      across('width', [0, 140], [980, 140], -1, mm(extent.right - extent.left), { base: 140 }),
      upright('depth', [0, 140], [0, 700], -1, mm(depth)),
      upright('gap', [200, 700], [200, 850], 1, mm(wall && gapToWall(wall, points)), { base: 130, beside: 'from' }),
      upright('height', [1300, 0], [1300, 605], -1, mm(desk.height), { base: 1310 }),
    ],
  };
}
