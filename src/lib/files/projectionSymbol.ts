import type { Point } from '$lib/geometry/point.ts';
import { line, type Primitive } from '$lib/drawing/primitive.ts';

/** How views are arranged: third angle puts each at the side it is seen from, first angle at the other. */
export type ProjectionAngle = 'first' | 'third';

const NARROW = 0.25;
const WIDE = 0.5;
/** Long dash, gap, dot, gap. */
const CENTRE = [3, 0.75, 0.25, 0.75];

/**
 * The symbol of ISO 5456-2: a cut cone lying with its thin end to the left, and what is seen of it from there: at that side in
 * third angle, at the other in first. `size`: diameter of the thick end; about 2.8 times as wide. `centre`: its middle.
 */
export function projectionSymbol([x, y]: Point, size: number, angle: ProjectionAngle): Primitive[] {
  const apart = 0.85 * size;
  const [cone, rings] = angle === 'third' ? [x + apart, x - apart] : [x - apart, x + apart];
  const half = size / 2;
  const over = 0.7 * size;
  const axis = (from: Point, to: Point): Primitive => ({ ...line([from, to], NARROW), dashes: CENTRE });
  return [
    {
      kind: 'line',
      points: [
        [cone - half, y - half / 2],
        [cone + half, y - half],
        [cone + half, y + half],
        [cone - half, y + half / 2],
      ],
      closed: true,
      width: WIDE,
    },
    ...[half / 2, half].map((radius): Primitive => ({ kind: 'circle', centre: [rings, y], radius, width: WIDE })),
    axis([cone - over, y], [cone + over, y]),
    axis([rings - over, y], [rings + over, y]),
    axis([rings, y - over], [rings, y + over]),
  ];
}
