import type { Point } from '$lib/geometry/point.ts';

export type Segment = readonly [Point, Point];

/** Lines nearer than this over their whole length are one line on any paper, mm of the real thing. */
const ONE_LINE = 0.5;

function isNear(point: Point, a: Point, b: Point): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const x = point[0] - a[0];
  const y = point[1] - a[1];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, (x * dx + y * dy) / square));
  return (x - t * dx) ** 2 + (y - t * dy) ** 2 < ONE_LINE * ONE_LINE;
}

/** Whether the line lies on one of the others from end to end: then it is not drawn again (ISO 128-2, coinciding lines). */
export const liesOn = ([from, to]: Segment, others: readonly Segment[]): boolean =>
  others.some((other) => isNear(from, other[0], other[1]) && isNear(to, other[0], other[1]));
