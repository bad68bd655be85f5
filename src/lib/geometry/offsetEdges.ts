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
  const edges = edgesOf(points);
  const normals = edges.map(inwardNormal);
  const moved = points.map((corner, i): Point => {
    const before = (i + points.length - 1) % points.length;
    const [x, y] = mitre(normals[before] ?? [0, 0], inward[before] ?? 0, normals[i] ?? [0, 0], inward[i] ?? 0);
    return [corner[0] + x, corner[1] + y];
  });
  const movedEdges = edgesOf(moved);
  // Written so that a corner at infinity, whose product is NaN, fails as well.
  const kept = edges.every((edge, i) => lengthAlong(edge, movedEdges[i] ?? edge) > VANISHED);
  return kept && !anyCross(movedEdges) ? moved : null;
}

type Edge = readonly [Point, Point];

const edgesOf = (points: readonly Point[]): Edge[] =>
  points.map((from, i): Edge => [from, points[(i + 1) % points.length] ?? from]);

const vector = ([from, to]: Edge): Point => [to[0] - from[0], to[1] - from[1]];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];

/** Length of a moved edge, negative when it has turned round. */
const lengthAlong = (edge: Edge, moved: Edge): number => dot(vector(edge), vector(moved)) / Math.hypot(...vector(edge));

function inwardNormal(edge: Edge): Point {
  const [x, y] = vector(edge);
  const length = Math.hypot(x, y);
  return [-y / length, x / length];
}

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

const anyCross = (edges: readonly Edge[]): boolean =>
  edges.some((edge, i) =>
    edges.some((other, j) => j > i + 1 && !(i === 0 && j === edges.length - 1) && cross(edge, other)),
  );

/** Whether two edges meet, touching included. */
const cross = (a: Edge, b: Edge): boolean => turn(a, b[0]) * turn(a, b[1]) <= 0 && turn(b, a[0]) * turn(b, a[1]) <= 0;

/** Positive when the point lies to the left of the edge. */
function turn([from, to]: Edge, point: Point): number {
  return (to[0] - from[0]) * (point[1] - from[1]) - (to[1] - from[1]) * (point[0] - from[0]);
}
