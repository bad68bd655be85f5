import { sideNames } from '$lib/project/project.ts';
import type { Plan, StandPlan } from '$lib/solution/document.ts';

/**
 * What a change costs on the bench, for the stand that it costs more: negative where it saves. Layers and wood are counted;
 * how many sheets they take is known only once they are nested.
 */
export interface Price {
  /** More layers in it. */
  readonly layers: number;
  /** kg that it is heavier by. */
  readonly mass: number;
  /** Whether the other stand costs the same. */
  readonly alike: boolean;
}

/** Less is no difference that anybody would carry, kg. */
const LEAST_MASS = 0.05;

export function priceOf(before: Plan, after: Plan): Price {
  const more = (of: (stand: StandPlan) => number): readonly number[] =>
    sideNames.map((side) => of(after.stand[side]) - of(before.stand[side]));
  const layers = more((stand) => stand.layers);
  const mass = more((stand) => stand.mass);
  return {
    layers: Math.max(...layers),
    mass: Math.max(...mass),
    alike: new Set(layers).size === 1 && Math.max(...mass) - Math.min(...mass) < LEAST_MASS,
  };
}

/** `3 more layers a stand`, `0.2 kg heavier a stand`; of stands that differ up to so much; none where it costs and saves nothing. */
export function priceText({ layers, mass, alike }: Price): string[] {
  const count = Math.abs(layers);
  // Of two that save, the least saving is the one that is counted.
  const most = (by: number): string => (alike ? '' : by > 0 ? 'up to ' : 'at least ');
  return [
    ...(layers === 0
      ? []
      : [`${most(layers)}${count} ${layers > 0 ? 'more' : 'fewer'} ${count === 1 ? 'layer' : 'layers'} a stand`]),
    ...(Math.abs(mass) < LEAST_MASS
      ? []
      : [`${most(mass)}${Math.abs(mass).toFixed(1)} kg ${mass > 0 ? 'heavier' : 'lighter'} a stand`]),
  ];
}
