import { between, cross, dot, subtract } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import { cabinetFrame, cornerOf } from './cabinetFrame.ts';
import type { Projection } from './projection.ts';

/**
 * Square to the baffle, as somebody on the axis sees the cabinet: first axis to that person's right, second along the
 * baffle, the origin in the middle of the front bottom edge. What stands level elsewhere stays level here.
 */
export function squareToBaffle(side: SidePlan): Projection {
  const { up, front } = cabinetFrame(side);
  const right = cross(up, front);
  const origin = between(cornerOf(side, 0), cornerOf(side, 1), 0.5);
  return {
    flat: (point) => {
      const from = subtract(point, origin);
      return [dot(from, right), dot(from, up)];
    },
    eye: front,
  };
}
