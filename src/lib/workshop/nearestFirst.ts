import { quadtree } from 'd3';
import type { Contour } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Where a cutter begins the contour: at its first vertex, a circle at its rightmost point. */
export function startOf(contour: Contour): Point {
  if (contour.kind === 'circle') return [contour.centre[0] + contour.radius, contour.centre[1]];
  const [first] = contour.vertices;
  if (!first) throw new Error('expected a path with vertices, got one without');
  return [first.x, first.y];
}

/** Where the cutter is when it has been round: an open path leaves it at the far end. */
export function endOf(contour: Contour): Point {
  const last = contour.kind === 'path' && !contour.closed ? contour.vertices.at(-1) : undefined;
  return last ? [last.x, last.y] : startOf(contour);
}

/** The contours in the order of always going to the nearest start, beginning from a point. Deterministic. */
export function nearestFirst(contours: readonly Contour[], from: Point): Contour[] {
  const waiting = quadtree<Waiting>(
    contours.map((contour) => ({ contour, at: startOf(contour) })),
    ({ at }) => at[0],
    ({ at }) => at[1],
  );
  const done: Contour[] = [];
  let at = from;
  for (let next = waiting.find(...at); next; next = waiting.find(...at)) {
    waiting.remove(next);
    done.push(next.contour);
    at = endOf(next.contour);
  }
  return done;
}

interface Waiting {
  readonly contour: Contour;
  readonly at: Point;
}
