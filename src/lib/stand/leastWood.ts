import type { Point } from '$lib/geometry/point.ts';

/** Least wood between the rims of round holes inside a polygon and the polygon's edge, mm. */
export function leastWood(polygon: readonly Point[], centres: readonly Point[], diameter: number): number {
  let least = Infinity;
  for (const centre of centres) {
    let from = polygon.at(-1);
    for (const to of polygon) {
      if (from) least = Math.min(least, distanceToEdge(centre, from, to));
      from = to;
    }
  }
  return least - diameter / 2;
}

/** From a point to the nearest point of an edge, its ends included. */
function distanceToEdge(point: Point, from: Point, to: Point): number {
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  const u = point[0] - from[0];
  const z = point[1] - from[1];
  const share = Math.min(1, Math.max(0, (u * x + z * y) / (x * x + y * y)));
  return Math.hypot(u - share * x, z - share * y);
}
