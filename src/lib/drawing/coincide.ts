import type { Point } from '$lib/geometry/point.ts';

export type Segment = readonly [Point, Point];

/** Lines nearer than this over their whole length are one line on any paper, mm of the real thing. */
const ONE_LINE = 0.5;

function distanceTo([a, b]: Segment, [x, y]: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / square));
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

/** Whether the line lies on one of the others from end to end: then it is not drawn again (ISO 128-2, coinciding lines). */
export const liesOn = (segment: Segment, others: readonly Segment[]): boolean =>
  others.some((other) => segment.every((end) => distanceTo(other, end) < ONE_LINE));
