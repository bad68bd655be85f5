import type { Point } from '$lib/geometry/point.ts';

/** `[left, bottom, right, top]`. */
export type Box = readonly [number, number, number, number];

/** The smallest box round the points. Of no points at all: a box that any union swallows. */
export const boxOf = (points: readonly Point[]): Box =>
  points.reduce<Box>(
    ([left, bottom, right, top], [x, y]) => [
      Math.min(left, x),
      Math.min(bottom, y),
      Math.max(right, x),
      Math.max(top, y),
    ],
    [Infinity, Infinity, -Infinity, -Infinity],
  );

/** The corners of an upright rectangle, counter-clockwise from its lower left. */
export const rectangle = ([left, bottom, right, top]: Box): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
