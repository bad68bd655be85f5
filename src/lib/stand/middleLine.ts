import type { Point } from '$lib/geometry/point.ts';

/**
 * The line that runs equally far from a stand's base and from its slope, from one end to the other. No place between
 * base and slope, at the same distance from the ends, has more wood round it than the one on this line.
 */
export interface MiddleLine {
  /** Where it meets the front and the rear end. */
  readonly front: Point;
  readonly rear: Point;
  /** Distance to the base, and to the slope, at its two points, mm. */
  readonly frontWood: number;
  readonly rearWood: number;
  /** Distance between the two ends, square to them. */
  readonly apart: number;
}

/** @param core A convex profile with parallel ends over 0 mm high: base front, base rear, top rear, top front. */
export function middleLineOf(core: readonly Point[]): MiddleLine {
  const [baseFront = [0, 0], baseRear = [0, 0], topRear = [0, 0], topFront = [0, 0]] = core;
  const middleOf = (base: Point, top: Point): Point => {
    const [toSlope, toBase] = [distanceToLine(base, topRear, topFront), distanceToLine(top, baseFront, baseRear)];
    const share = toSlope / (toSlope + toBase);
    return [base[0] + (top[0] - base[0]) * share, base[1] + (top[1] - base[1]) * share];
  };
  const [front, rear] = [middleOf(baseFront, topFront), middleOf(baseRear, topRear)];
  return {
    front,
    rear,
    frontWood: distanceToLine(front, baseFront, baseRear),
    rearWood: distanceToLine(rear, baseFront, baseRear),
    apart: distanceToLine(front, baseRear, topRear),
  };
}

/** The stretch of the line that has so much wood on every side; null when there is none. */
export function stretchWith(line: MiddleLine, wood: number): readonly [Point, Point] | null {
  const { front, rear, frontWood, rearWood } = line;
  let [from, to] = [wood / line.apart, 1 - wood / line.apart];
  // Towards a thinner end, up to where base and slope come that near; beyond the other end, or at infinity, when they are
  // nearer all along.
  const crossing = (wood - frontWood) / (rearWood - frontWood);
  if (frontWood < wood) from = Math.max(from, crossing);
  if (rearWood < wood) to = Math.min(to, crossing);
  if (from > to) return null;
  const at = (share: number): Point => [
    front[0] + (rear[0] - front[0]) * share,
    front[1] + (rear[1] - front[1]) * share,
  ];
  return [at(from), at(to)];
}

function distanceToLine([u, z]: Point, from: Point, to: Point): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  return (x * (z - from[1]) - y * (u - from[0])) / Math.hypot(x, y);
}
