import { degrees } from '$lib/geometry/angle.ts';
import type { Triangle } from '$lib/layout/triangle.ts';
import type { TrianglePlan } from './document.ts';

const MICROSECONDS_PER_MM = 1000;

/** The listening triangle with what it does to arrival and level. @param speed Of sound, m/s. */
export const trianglePlan = ({ base, leftDistance, rightDistance, angle }: Triangle, speed: number): TrianglePlan => ({
  base,
  leftDistance,
  rightDistance,
  angle: degrees(angle),
  timeDifference: ((leftDistance - rightDistance) / speed) * MICROSECONDS_PER_MM,
  levelDifference: 20 * Math.log10(leftDistance / rightDistance),
});
