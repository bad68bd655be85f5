import { edgesOf, facesArc, type Edge } from './edge.ts';
import type { Contour } from './contour.ts';
import type { Point } from './point.ts';

/** An upright rectangle that bounds something. */
export interface Extent {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The smallest upright rectangle round some contours, arcs taken in full. Without a point: left Infinity, right −Infinity. */
export const extentOf = (...contours: readonly Contour[]): Extent =>
  around(contours.flatMap((contour) => edgesOf(contour).flatMap(extremes)));

/** The smallest upright rectangle round an edge. */
export const edgeExtent = (edge: Edge): Extent => around(extremes(edge));

export function around(points: readonly Point[]): Extent {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  }
  return { left, bottom, right, top };
}

function extremes(edge: Edge): Point[] {
  if (edge.kind === 'straight') return [edge.start, edge.end];
  const { centre, radius } = edge;
  const compass: Point[] = [
    [centre[0] + radius, centre[1]],
    [centre[0], centre[1] + radius],
    [centre[0] - radius, centre[1]],
    [centre[0], centre[1] - radius],
  ];
  return [edge.start, edge.end, ...compass.filter((point) => facesArc(edge, point))];
}
