import type { Point } from '$lib/geometry/point.ts';
import type { RodHole } from './rods.ts';

/**
 * Middle of the area of a simple, counter-clockwise polygon less round holes inside it. Summed from the first corner, so
 * that a profile far from the mark keeps its digits.
 */
export function centroidOf(polygon: readonly Point[], holes: readonly RodHole[]): Point {
  const [origin = [0, 0]] = polygon;
  let [area, u, z] = [0, 0, 0];
  const count = (part: number, [atU, atZ]: Point): void => {
    area += part;
    u += part * atU;
    z += part * atZ;
  };
  polygon.forEach((corner, i) => {
    const next = polygon[(i + 1) % polygon.length] ?? corner;
    const [a, b] = [corner[0] - origin[0], corner[1] - origin[1]];
    const [c, d] = [next[0] - origin[0], next[1] - origin[1]];
    count((a * d - c * b) / 2, [(a + c) / 3, (b + d) / 3]);
  });
  for (const hole of holes) {
    count((-Math.PI * hole.diameter ** 2) / 4, [hole.u - origin[0], hole.z - origin[1]]);
  }
  return [origin[0] + u / area, origin[1] + z / area];
}
