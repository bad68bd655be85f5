import type { Circle, Path } from '$lib/geometry/contour.ts';
import { edgesOf, heading, pointAt, type Edge } from '$lib/geometry/edge.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Chords to an arc. */
const CHORDS = 48;

/** The corners of a drawn outline, arcs as chords. */
export const ringOf = (path: Path): Point[] =>
  edgesOf(path).flatMap((edge) => {
    const count = edge.kind === 'arc' ? CHORDS : 1;
    return Array.from({ length: count }, (_, i) => pointAt(edge, i / count));
  });

/** By the shoelace, signed. */
export const areaOf = (ring: readonly Point[]): number => {
  let sum = 0;
  let before = ring.at(-1);
  for (const point of ring) {
    if (before) sum += (before[0] * point[1] - point[0] * before[1]) / 2;
    before = point;
  }
  return sum;
};

/** What of a ring lies where a·x + b·y ≤ c; of a ring that is cut in two, both parts in one, their areas right. */
export function clipped(ring: readonly Point[], a: number, b: number, c: number): Point[] {
  const over = ([x, y]: Point): number => a * x + b * y - c;
  const kept: Point[] = [];
  let from = ring.at(-1) ?? [0, 0];
  let p = over(from);
  for (const to of ring) {
    const q = over(to);
    if (p < 0 !== q < 0 && p !== 0 && q !== 0) {
      const share = p / (p - q);
      kept.push([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
    }
    if (q <= 0) kept.push(to);
    [from, p] = [to, q];
  }
  return kept;
}

/** Area of what of a ring lies in a rectangle. */
export const areaWithin = (ring: readonly Point[], [left, bottom]: Point, [right, top]: Point): number =>
  Math.abs(areaOf(clipped(clipped(clipped(clipped(ring, -1, 0, -left), 1, 0, right), 0, -1, -bottom), 0, 1, top)));

/** Where a plumb line meets a ring, from below. */
function met(ring: readonly Point[], u: number): number[] {
  const found: number[] = [];
  let before = ring.at(-1);
  for (const to of ring) {
    const from = before ?? to;
    before = to;
    if (Math.min(from[0], to[0]) > u || Math.max(from[0], to[0]) < u) continue;
    if (from[0] === to[0]) found.push(from[1], to[1]);
    else found.push(from[1] + ((to[1] - from[1]) * (u - from[0])) / (to[0] - from[0]));
  }
  return found.sort((a, b) => a - b);
}

/** The highest point of a ring at a place; null beside it. */
export const heightAt = (ring: readonly Point[], u: number): number | null => met(ring, u).at(-1) ?? null;

/** The lowest one. */
export const lowestAt = (ring: readonly Point[], u: number): number | null => met(ring, u)[0] ?? null;

/** Where a line through a point, in a direction, meets a ring: distances along it, in order. */
export function alongLine(ring: readonly Point[], [x, y]: Point, [cos, sin]: Point): number[] {
  const turned = ring.map(([u, z]): Point => [(u - x) * -sin + (z - y) * cos, (u - x) * cos + (z - y) * sin]);
  return met(turned, 0);
}

/** mm² between the arcs of a path and their chords: what a ring of it lacks. */
export const besideChords = (path: Path): number =>
  edgesOf(path).reduce((sum, edge) => {
    if (edge.kind === 'straight') return sum;
    const { radius, sweep } = edge;
    return sum + (radius ** 2 / 2) * (sweep - CHORDS * Math.sin(sweep / CHORDS));
  }, 0);

/** mm² of holes: circles and paths, whichever way they run. */
export const holeArea = (holes: readonly (Path | Circle)[]): number =>
  holes.reduce(
    (sum, hole) =>
      sum + (hole.kind === 'circle' ? Math.PI * hole.radius ** 2 : Math.abs(areaOf(ringOf(hole)) + besideChords(hole))),
    0,
  );

/**
 * Where the line of an outline's front end meets that of its base: its front corner, had it not been rounded. The front is
 * at the left, and the outline counter-clockwise.
 */
export function frontCorner(path: Path): Point {
  const edges = edgesOf(path);
  const base = Math.min(...edges.map(({ start }) => start[1]));
  const onBase = (edge: Edge): boolean =>
    edge.kind === 'straight' && Math.abs(edge.start[1] - base) < 1e-9 && Math.abs(edge.end[1] - base) < 1e-9;
  const first = edges.reduce(
    (least, edge, i) => (onBase(edge) && edge.start[0] < (edges[least]?.start[0] ?? Infinity) ? i : least),
    edges.findIndex(onBase),
  );
  const before = edges.at(first - 1);
  if (!before) throw new Error('an outline has edges');
  const [x, y] = before.start;
  const [dx, dy] = heading(before, 'start');
  return [x + (dx * (base - y)) / dy, base];
}
