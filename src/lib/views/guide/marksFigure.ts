import type { Point } from '$lib/geometry/point.ts';
import { across, area, cross, type Figure, label, line, rect, upright } from '$lib/views/figure/figure.ts';
import { headAbove } from '$lib/views/figure/person.ts';
import type { GuideNumbers } from './numbers.ts';

/** The desk from above: each cabinet's mark under the middle of its front edge. */
export function marksFigure({ layout: { placement }, mm }: GuideNumbers): Figure {
  const [x, y] = [430, 330];
  return {
    extent: [-700, -330, 700, 700],
    says: 'The desk from above: from its middle line sideways to the mark, and from its front edge to the mark. The mark is under the middle of the cabinet’s front bottom edge.',
    shapes: [
      rect('top', 'desk', [-700, 0, 700, 700]),
      line(
        'middle',
        'desk',
        [
          [0, -360],
          [0, 730],
        ],
        'centre',
      ),
      ...headAbove([0, -210]),
      cabinet('left', [-x, y], -1),
      cabinet('right', [x, y], 1),
      cross('left-mark', [-x, y]),
      cross('right-mark', [x, y]),
      label('name', [x - 40, y - 60], 'mark', 'end'),
    ],
    dimensions: [
      across('sideways', [0, y], [x, y], 1, mm(placement.right.x)),
      upright('from-edge', [x, 0], [x, y], 1, mm(placement.right.y)),
    ],
  };
}

/** Turned to the head; its front edge runs through the mark. */
function cabinet(id: string, [x, y]: Point, side: 1 | -1) {
  const turn = (-side * 38 * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corners: readonly Point[] = [
    [-105, 0],
    [105, 0],
    [105, 250],
    [-105, 250],
  ];
  return area(
    id,
    'cabinet',
    corners.map(([u, v]): Point => [x + c * u - s * v, y + s * u + c * v]),
  );
}
