import { apart, inner, minus, outer, shifted, unit } from './plane.ts';
import type { Path, Vertex } from './contour.ts';
import type { Point } from './point.ts';

/** Two arcs that meet leave an edge of rounding between them; a shorter one, mm, is left out. */
const MEETS = 1e-9;

/** A path with rounded corners, and the radius that it has come to. */
export interface Rounded {
  readonly path: Path;
  /** mm; the one asked for, or the largest that the shortest edge has room for. */
  readonly radius: number;
}

/**
 * A polygon with true arcs at its corners: at those that are `chosen` and turn left (outside corners, when it runs
 * counter-clockwise). All have one radius, reduced as far as it takes for both arcs of every edge to fit on it.
 */
export function roundCorners(points: readonly Point[], asked: number, chosen: (index: number) => boolean): Rounded {
  const turns = points.map((point, i) => (chosen(i) ? Math.max(0, turnAt(points, point, i)) : 0));
  const radius = points.reduce((least, from, i) => {
    const next = (i + 1) % points.length;
    const needed = Math.tan((turns[i] ?? 0) / 2) + Math.tan((turns[next] ?? 0) / 2);
    return needed > 0 ? Math.min(least, apart(from, points[next] ?? from) / needed) : least;
  }, asked);
  const vertices = points.flatMap((point, i): Vertex[] => {
    const turn = turns[i] ?? 0;
    if (turn === 0 || radius === 0) return [{ x: point[0], y: point[1], bulge: 0 }];
    const reach = radius * Math.tan(turn / 2);
    const start = shifted(point, unit(minus(before(points, i), point)), reach);
    const end = shifted(point, unit(minus(after(points, i), point)), reach);
    return [
      { x: start[0], y: start[1], bulge: Math.tan(turn / 4) },
      { x: end[0], y: end[1], bulge: 0 },
    ];
  });
  return { path: { kind: 'path', closed: true, vertices: withoutDust(vertices) }, radius };
}

const before = (points: readonly Point[], i: number): Point => points.at(i - 1) ?? [0, 0];
const after = (points: readonly Point[], i: number): Point => points[(i + 1) % points.length] ?? [0, 0];

/** Radians, positive to the left. */
function turnAt(points: readonly Point[], point: Point, i: number): number {
  const [arriving, leaving] = [minus(point, before(points, i)), minus(after(points, i), point)];
  return Math.atan2(outer(arriving, leaving), inner(arriving, leaving));
}

/** Without the starts of straight edges that have no length left. */
const withoutDust = (vertices: readonly Vertex[]): Vertex[] =>
  vertices.filter((vertex, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? vertex;
    return vertex.bulge !== 0 || Math.hypot(next.x - vertex.x, next.y - vertex.y) > MEETS;
  });
