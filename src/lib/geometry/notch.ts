import { inner, minus, norm, outer, shifted, unit } from './plane.ts';
import type { Point } from './point.ts';

/** How far a notch's mouth may lie off the edge that it is cut into, mm: rounding of coordinates of metres. */
const ON_EDGE = 1e-6;

/**
 * A polygon with a notch cut into the edge that holds both ends of its mouth: corners from `mouth[0]` by `floor` to
 * `mouth[1]` take the place of the stretch between them. Null when no edge holds both, or the mouth runs against the edge.
 */
export function notched(
  points: readonly Point[],
  mouth: readonly [Point, Point],
  floor: readonly Point[],
): readonly Point[] | null {
  const at = points.findIndex((from, i) => {
    const to = points[(i + 1) % points.length] ?? from;
    const along = unit(minus(to, from));
    const places = mouth.map((point) => inner(minus(point, from), along));
    const off = mouth.map((point) => Math.abs(outer(along, minus(point, from))));
    const [start = 0, end = 0] = places;
    return Math.max(...off) <= ON_EDGE && start >= -ON_EDGE && start < end && end <= norm(minus(to, from)) + ON_EDGE;
  });
  if (at < 0) return null;
  return [...points.slice(0, at + 1), mouth[0], ...floor, mouth[1], ...points.slice(at + 1)];
}

/** The floor of a notch as deep as `depth` mm, square to its mouth, in a counter-clockwise polygon. */
export function squareFloor([start, end]: readonly [Point, Point], depth: number): readonly Point[] {
  const [x, y] = unit(minus(end, start));
  const inwards: Point = [-y, x];
  return [shifted(start, inwards, depth), shifted(end, inwards, depth)];
}
