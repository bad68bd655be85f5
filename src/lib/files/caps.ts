import earcut from 'earcut';
import type { Point } from '$lib/geometry/point.ts';
import { sidesOf, type Triangle } from './mesh.ts';
import { sideOf, type Ring } from './ring.ts';

/**
 * The flat region between a ring and the rings of its holes as counter-clockwise triangles. Corners are numbered through
 * the rings in order; every side of every ring is a side of exactly one triangle.
 */
export function triangulated(outer: Ring, holes: readonly Ring[]): Triangle[] {
  const rings = [outer, ...holes];
  const points = rings.flatMap((ring) => ring.points);
  const starts = holes.map((_, i) => rings.slice(0, i + 1).reduce((sum, ring) => sum + ring.points.length, 0));
  const corners = earcut(points.flat(), starts);
  const triangles: Triangle[] = [];
  for (let at = 0; at + 2 < corners.length; at += 3) {
    const [a, b, c] = [corners[at] ?? 0, corners[at + 1] ?? 0, corners[at + 2] ?? 0];
    const side = areaOf([a, b, c], points);
    if (side !== 0) triangles.push(side > 0 ? [a, b, c] : [a, c, b]);
  }
  return conforming(triangles, points, ringSides(rings));
}

const sideName = (from: number, to: number): string => `${from} ${to}`;

/** The sides of the rings as the region's triangles run along them: round the outer ring with it, round holes against. */
function ringSides(rings: readonly Ring[]): Set<string> {
  const sides = new Set<string>();
  let first = 0;
  rings.forEach(({ points: { length } }, ring) => {
    for (let i = 0; i < length; i += 1) {
      const [from, to] = [first + i, first + ((i + 1) % length)];
      sides.add(ring === 0 ? sideName(from, to) : sideName(to, from));
    }
    first += length;
  });
  return sides;
}

/**
 * Triangulation leaves a corner out where a bridge to a hole runs straight on through it, so a triangle may pass it with
 * a long side. Such triangles are split there, until all sides have their mates.
 */
function conforming(triangles: readonly Triangle[], points: readonly Point[], rim: ReadonlySet<string>): Triangle[] {
  const runs = new Set(triangles.flatMap((triangle) => sidesOf(triangle).map(([from, to]) => sideName(from, to))));
  const lonely = (from: number, to: number): boolean => !runs.has(sideName(to, from)) && !rim.has(sideName(from, to));
  return triangles.flatMap((triangle) => split(triangle, points, lonely));
}

function split(
  triangle: Triangle,
  points: readonly Point[],
  lonely: (from: number, to: number) => boolean,
): Triangle[] {
  const turns: readonly Triangle[] = [
    triangle,
    [triangle[1], triangle[2], triangle[0]],
    [triangle[2], triangle[0], triangle[1]],
  ];
  for (const [from, to, opposite] of turns) {
    if (!lonely(from, to)) continue;
    const between = passedBy(from, to, points);
    const stops = [from, ...between, to];
    if (between.length > 0) {
      return stops.slice(1).flatMap((stop, i) => split([stops[i] ?? from, stop, opposite], points, lonely));
    }
  }
  return [triangle];
}

/** The corners strictly within the way from one corner to another, in their order along it. */
function passedBy(from: number, to: number, points: readonly Point[]): number[] {
  const [a, b] = [points[from], points[to]];
  if (!a || !b) return [];
  const along = ([x, y]: Point): number => (x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1]);
  return points
    .map((point, corner) => ({ corner, point, place: along(point) }))
    .filter(({ point, place }) => sideOf(a, b, point) === 0 && place > 0 && place < along(b))
    .sort((one, other) => one.place - other.place)
    .map(({ corner }) => corner);
}

function areaOf([a, b, c]: Triangle, points: readonly Point[]): number {
  const [one, two, three] = [points[a], points[b], points[c]];
  return one && two && three ? sideOf(one, two, three) : 0;
}
