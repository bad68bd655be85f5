import { radians } from '$lib/geometry/angle.ts';
import { sideNames } from '$lib/project/project.ts';
import { baffleGauge, wedgeGauge } from '$lib/workshop/gauge.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Plan } from './document.ts';

/** Sides whose angles differ by less than this, degrees, share a gauge: no eye tells them apart. */
const ALIKE = 0.005;

/** Gauges of the angles to check: the wedge’s and the baffle’s, one for both sides where those agree. */
export function planGauges({ sides, stand }: Pick<Plan, 'sides' | 'stand'>): readonly Part[] {
  const kinds = [
    { name: 'wedge-gauge', angle: (side: 'left' | 'right') => sides[side].tilt, make: wedgeGauge },
    { name: 'baffle-gauge', angle: (side: 'left' | 'right') => sides[side].axisElevation, make: baffleGauge },
  ];
  return kinds.flatMap(({ name, angle, make }) => {
    const alike = Math.abs(angle('left') - angle('right')) < ALIKE;
    const told = alike ? (['right'] as const) : sideNames;
    return told.flatMap((side) => {
      const { stock, thickness } = stand[side];
      return make(alike ? name : `${name}-${side}`, radians(angle(side)), { name: stock, thickness }) ?? [];
    });
  });
}
