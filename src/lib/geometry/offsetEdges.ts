import type { Point } from './point.ts';

/** An edge this short, mm, is what rounding leaves of one that has vanished: coordinates of metres carry 1e-12 mm. */
const VANISHED = 1e-10;

/**
 * A polygon with each edge moved inwards by its own distance, corners mitred: every new edge is parallel to its old one
 * and exactly `inward[i]` from it. Edge i runs from point i to the next; the polygon is simple and counter-clockwise;
 * negative distances move an edge outwards. As many corners come out as went in.
 *
 * Null when there is no such polygon: an edge would vanish or turn round, edges would cross, or two neighbours lie in one
 * line with different distances.
 */
export function offsetEdges(points: readonly Point[], inward: readonly number[]): readonly Point[] | null {
  const last = points.length - 1;
  const normals = points.map((from, i) => inwardNormal(from, points[i === last ? 0 : i + 1] ?? from));
  const moved = points.map((corner, i): Point => {
    const before = i === 0 ? last : i - 1;
    const by = mitre(normals[before] ?? ORIGIN, inward[before] ?? 0, normals[i] ?? ORIGIN, inward[i] ?? 0);
    return [corner[0] + by[0], corner[1] + by[1]];
  });
  return points.every((_, i) => isKept(points, moved, i, i === last ? 0 : i + 1)) && !anyCross(moved) ? moved : null;
}

const ORIGIN: Point = [0, 0];

/**
 * Whether the edge between two corners still runs its old way, at least the hair that rounding leaves. Written so that a
 * corner at infinity, whose product is NaN, fails as well.
 */
function isKept(points: readonly Point[], moved: readonly Point[], from: number, to: number): boolean {
  const [a, b, c, d] = [points[from] ?? ORIGIN, points[to] ?? ORIGIN, moved[from] ?? ORIGIN, moved[to] ?? ORIGIN];
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  return (x * (d[0] - c[0]) + y * (d[1] - c[1])) / Math.hypot(x, y) > VANISHED;
}

function inwardNormal(from: Point, to: Point): Point {
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  const length = Math.hypot(x, y);
  return [-y / length, x / length];
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];

/**
 * Where two lines meet that lie `d1` along `n1` and `d2` along `n2` from the origin. Split into the part that the two
 * share and the part in which they differ, so that neighbours almost in one line stay exact when they move alike.
 */
function mitre(n1: Point, d1: number, n2: Point, d2: number): Point {
  const sum: Point = [n1[0] + n2[0], n1[1] + n2[1]];
  const shared = (d1 + d2) / dot(sum, sum);
  if (d1 === d2) return [shared * sum[0], shared * sum[1]];
  const difference: Point = [n1[0] - n2[0], n1[1] - n2[1]];
  const apart = (d1 - d2) / dot(difference, difference);
  return [shared * sum[0] + apart * difference[0], shared * sum[1] + apart * difference[1]];
}

/** Whether two edges meet that have no corner in common. */
function anyCross(points: readonly Point[]): boolean {
  const last = points.length - 1;
  for (let i = 0; i + 2 <= last; i += 1) {
    for (let j = i + 2; j <= (i === 0 ? last - 1 : last); j += 1) {
      const [a, b, c, d] = [points[i], points[i + 1], points[j], points[j === last ? 0 : j + 1]];
      if (a && b && c && d && cross(a, b, c, d)) return true;
    }
  }
  return false;
}

/** Whether the edge from `a` to `b` meets the one from `c` to `d`, touching included. */
const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0;

/** Positive when the point lies to the left of the edge. */
const turn = (from: Point, to: Point, point: Point): number =>
  (to[0] - from[0]) * (point[1] - from[1]) - (to[1] - from[1]) * (point[0] - from[0]);
