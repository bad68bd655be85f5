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

export const middleOf = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
