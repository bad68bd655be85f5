import type { Point } from '$lib/geometry/point.ts';

const turn = (o: Point, a: Point, b: Point): number => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

function chain(points: readonly Point[]): Point[] {
  const hull: Point[] = [];
  for (const point of points) {
    for (;;) {
      const [before, last] = hull.slice(-2);
      if (before === undefined || last === undefined || turn(before, last, point) > 0) break;
      hull.pop();
    }
    hull.push(point);
  }
  return hull.slice(0, -1);
}

/**
 * The convex hull, counter-clockwise, without points that lie on its edges (A. M. Andrew's monotone chain, 1979). Fewer than
 * three different points come back as they are, without repeats.
 */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points]
    .sort((a, b) => a[0] - b[0] || a[1] - b[1])
    .filter((point, index, all) => {
      const before = all[index - 1];
      return before === undefined || before[0] !== point[0] || before[1] !== point[1];
    });
  if (sorted.length < 3) return sorted;
  return [...chain(sorted), ...chain([...sorted].reverse())];
}
