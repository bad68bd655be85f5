import { edgesOf, type ArcEdge, type Edge } from './edge.ts';
import { apart, minus, outer } from './plane.ts';
import type { Contour } from './contour.ts';
import type { Point } from './point.ts';

/** Whether a point lies inside a closed contour. A point on the contour itself may come out either way. */
export const isInside = (point: Point, contour: Contour): boolean => isInsideEdges(point, edgesOf(contour));

/** The same for the edges of a closed contour. Every arc toggles the cap between it and its chord. */
export function isInsideEdges(point: Point, edges: readonly Edge[]): boolean {
  let inside = false;
  for (const edge of edges) {
    if (chordCrosses(point, edge)) inside = !inside;
    if (edge.kind === 'arc' && inCap(point, edge)) inside = !inside;
  }
  return inside;
}

/** Seen along a ray to the right; the half-open rule counts a shared corner once. */
function chordCrosses(point: Point, edge: Edge): boolean {
  const upward = edge.end[1] > point[1];
  if (upward === edge.start[1] > point[1]) return false;
  return upward ? side(point, edge) > 0 : side(point, edge) < 0;
}

const side = (point: Point, { start, end }: Edge): number => outer(minus(end, start), minus(point, start));

/**
 * In the disc, and on the arc's side of its chord: right of it for a counter-clockwise arc. A point on the chord itself
 * goes to the side that the ray rule above gives it, so that the two toggles never disagree.
 */
function inCap(point: Point, arc: ArcEdge): boolean {
  if (apart(point, arc.centre) >= arc.radius) return false;
  const [dx, dy] = minus(arc.end, arc.start);
  const here = side(point, arc);
  const right = here < 0 || (here === 0 && (dy > 0 || (dy === 0 && dx < 0)));
  return right === arc.sweep > 0;
}
