import type { Point } from '$lib/geometry/point.ts';

/** The point a way off in a direction. */
export const offset = ([x, y]: Point, [dx, dy]: Point, by: number): Point => [x + dx * by, y + dy * by];

/** The direction from one point to another as a unit vector; to the right when they are the same. */
export function direction(from: Point, to: Point): Point {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(x, y);
  return size === 0 ? [1, 0] : [x / size, y / size];
}

export const reverse = ([x, y]: Point): Point => [-x, -y];

/** The point at a share of the way from one point to another. */
export const between = (a: Point, b: Point, share: number): Point => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];
