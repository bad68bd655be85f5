import { add, dot, length, subtract, type Vec3 } from '$lib/geometry/point.ts';

/**
 * Length of the path from `a` to the head less that from `b`, mm; positive when `a` is farther. Taken as
 * (p² − q²)/(p + q), whose numerator needs no squares of the long paths, so nearly equal paths keep all their digits.
 */
export function pathDifference(a: Vec3, b: Vec3, head: Vec3): number {
  const fromA = subtract(head, a);
  const fromB = subtract(head, b);
  const together = length(fromA) + length(fromB);
  // Both points at the head: no path at all, and no 0/0.
  return together === 0 ? 0 : dot(subtract(b, a), add(fromA, fromB)) / together;
}
