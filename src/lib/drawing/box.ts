import { around } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';

/** `[left, bottom, right, top]`. */
export type Box = readonly [number, number, number, number];

/** The smallest box round the points. Of no points at all: a box that any union swallows. */
export function boxOf(points: readonly Point[]): Box {
  const { left, bottom, right, top } = around(points);
  return [left, bottom, right, top];
}

/** The corners of an upright rectangle, counter-clockwise from its lower left. */
export const rectangle = ([left, bottom, right, top]: Box): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** The smallest box round boxes, of which there is one at least. */
export const unionOf = (boxes: readonly Box[]): Box => [
  Math.min(...boxes.map(([left]) => left)),
  Math.min(...boxes.map(([, bottom]) => bottom)),
  Math.max(...boxes.map(([, , right]) => right)),
  Math.max(...boxes.map(([, , , top]) => top)),
];
