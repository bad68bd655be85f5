import { minus, outer } from './plane.ts';
import type { Point } from './point.ts';

/** The convex hull of points, counter-clockwise, without points along its edges (A. M. Andrew's monotone chain); fewer than three for points in a line. */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
  const [lower, upper] = [chain(sorted), chain(sorted.toReversed())];
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    for (;;) {
      const [before, last] = [kept.at(-2), kept.at(-1)];
      if (!before || !last || outer(minus(last, before), minus(point, before)) > 0) break;
      kept.pop();
    }
    kept.push(point);
  }
  return kept;
}
