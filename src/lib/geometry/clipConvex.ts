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
  const side = (point: Point): number => outer(along, minus(point, from)) / reach;
  const kept = polygon.flatMap((point, i): Point[] => {
    const next = polygon[(i + 1) % polygon.length] ?? point;
    const [here, there] = [side(point), side(next)];
    const crossing = here >= 0 === there >= 0 ? [] : [shifted(point, minus(next, point), here / (here - there))];
    return here >= 0 ? [point, ...crossing] : crossing;
  });
  const sound = kept.filter((point, i) => norm(minus(kept[(i + 1) % kept.length] ?? point, point)) > DUST);
  return sound.length >= 3 && spread(sound) > DUST ? sound : [];
}

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

/** How far the corners lie from the line through the first and the furthest of them, at most. */
function spread(points: readonly Point[]): number {
  const [first = [0, 0]] = points;
  const far = points.reduce((a, b) => (norm(minus(b, first)) > norm(minus(a, first)) ? b : a), first);
  const line = minus(far, first);
  const size = Math.sqrt(inner(line, line));
  return size === 0 ? 0 : Math.max(...points.map((point) => Math.abs(outer(line, minus(point, first))) / size));
}
