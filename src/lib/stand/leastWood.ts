import type { Point } from '$lib/geometry/point.ts';

/** Least wood between the rims of round holes inside a polygon and the polygon's edge, mm. */
export function leastWood(polygon: readonly Point[], centres: readonly Point[], diameter: number): number {
  const distances = centres.flatMap((centre) =>
    polygon.map((from, i) => distanceToEdge(centre, from, polygon[(i + 1) % polygon.length] ?? from)),
  );
  return Math.min(...distances) - diameter / 2;
}

/** From a point to the nearest point of an edge, its ends included. */
function distanceToEdge([u, z]: Point, from: Point, to: Point): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const along = ((u - from[0]) * x + (z - from[1]) * y) / (x * x + y * y);
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(u - from[0] - share * x, z - from[1] - share * y);
}
