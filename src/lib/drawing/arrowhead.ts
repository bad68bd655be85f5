import type { Point } from '$lib/geometry/point.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import { offset } from './paperVector.ts';

/** A slender filled arrowhead with its tip at a point, flying in a direction (unit vector). */
export function arrowhead(
  tip: Point,
  flight: Point,
  { arrow, arrowHalf }: DimensionStyle,
): readonly [Point, Point, Point] {
  const tail = offset(tip, flight, -arrow);
  const across: Point = [-flight[1], flight[0]];
  return [tip, offset(tail, across, arrowHalf), offset(tail, across, -arrowHalf)];
}
