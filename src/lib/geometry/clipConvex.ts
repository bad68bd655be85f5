import { inner, minus, norm, outer, shifted } from './plane.ts';
import type { Point } from './point.ts';

/** A side shorter than this, mm, is what rounding leaves of one that a line just touches. */
const DUST = 1e-9;

/**
 * What of a convex, counter-clockwise polygon lies on the left of the line from `from` towards `to`. Counter-clockwise;
 * empty when nothing does, or only an edge or a corner.
 */
export function clipConvex(polygon: readonly Point[], from: Point, to: Point): readonly Point[] {
  const along = minus(to, from);
  const reach = norm(along);
  const sides = polygon.map((point) => outer(along, minus(point, from)) / reach);
  const kept: Point[] = [];
  for (const [i, point] of polygon.entries()) {
    const after = (i + 1) % polygon.length;
    const [here, there] = [sides[i] ?? NaN, sides[after] ?? NaN];
    if (here >= 0) kept.push(point);
    if (here >= 0 !== there >= 0)
      kept.push(shifted(point, minus(polygon[after] ?? point, point), here / (here - there)));
  }
  const sound = kept.filter((point, i) => !isDust(minus(kept[(i + 1) % kept.length] ?? point, point)));
  return sound.length >= 3 && !isFlat(sound) ? sound : [];
}

/** The length itself, which takes its time, is asked for only where it is near the limit. */
const isDust = ([x, y]: Point): boolean => Math.abs(x) + Math.abs(y) < 2 * DUST && norm([x, y]) <= DUST;

/**
 * A convex, counter-clockwise polygon with each edge moved inwards by its own distance (edge i leaves point i), 0 or more.
 * Edges may vanish on the way; empty when nothing is left.
 */
export function insetConvex(polygon: readonly Point[], inward: readonly number[]): readonly Point[] {
  return polygon.reduce<readonly Point[]>((left, from, i) => {
    const to = polygon[(i + 1) % polygon.length] ?? from;
    const [x, y] = minus(to, from);
    const size = norm([x, y]);
    const moved: Point = [from[0] - (y / size) * (inward[i] ?? 0), from[1] + (x / size) * (inward[i] ?? 0)];
    return left.length === 0 ? left : clipConvex(left, moved, [moved[0] + x, moved[1] + y]);
  }, polygon);
}

/** The common part of two convex, counter-clockwise polygons; empty when they only touch or lie apart. */
export const overlapConvex = (a: readonly Point[], b: readonly Point[]): readonly Point[] =>
  b.reduce<readonly Point[]>(
    (left, from, i) => (left.length === 0 ? left : clipConvex(left, from, b[(i + 1) % b.length] ?? from)),
    a,
  );

/**
 * Whether no corner lies further than dust from the line through the first and the furthest of them. A convex polygon lies
 * in a box along that line, at most twice as long and twice as wide as those distances: most have too large an area for it.
 */
function isFlat(points: readonly Point[]): boolean {
  const [first = [0, 0]] = points;
  let [twiceArea, reach] = [0, 0];
  for (const [i, point] of points.entries()) {
    const from = minus(point, first);
    twiceArea += outer(from, minus(points[(i + 1) % points.length] ?? point, first));
    reach = Math.max(reach, Math.abs(from[0]) + Math.abs(from[1]));
  }
  // Twice over, for the rounding of the sums.
  if (twiceArea > 16 * reach * DUST) return false;
  const far = points.reduce((a, b) => (norm(minus(b, first)) > norm(minus(a, first)) ? b : a), first);
  const line = minus(far, first);
  const size = Math.sqrt(inner(line, line));
  return size === 0 || Math.max(...points.map((point) => Math.abs(outer(line, minus(point, first))) / size)) <= DUST;
}
