import type { Point } from './point.ts';

/** The vector from `b` to `a`. */
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
/** The point `a + factor · direction`. */
export const shifted = (a: Point, direction: Point, factor = 1): Point => [
  a[0] + factor * direction[0],
  a[1] + factor * direction[1],
];
export const inner = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
/** Twice the area that `a` and `b` span, positive when `b` lies counter-clockwise of `a`. */
export const outer = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
export const norm = (a: Point): number => Math.hypot(a[0], a[1]);
export const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** The unit vector along `a`; a zero vector stays zero, as it has no direction. */
export function unit(a: Point): Point {
  const size = norm(a);
  return size === 0 ? a : [a[0] / size, a[1] / size];
}
/** A quarter turn clockwise: the right-hand side of a traveller along `a`. */
export const rightOf = (a: Point): Point => [a[1], -a[0]];
export const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
