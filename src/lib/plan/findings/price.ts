import { sideNames } from '$lib/project/project.ts';
import type { Plan } from '$lib/plan/document.ts';

/** What a change costs on the bench, for the stand that it costs more: negative where it saves. */
export interface Price {
  /** More layers in it. */
  readonly layers: number;
  /** kg that it is heavier by. */
  readonly mass: number;
}

export function priceOf(before: Plan, after: Plan): Price {
  const most = (of: (plan: Plan, side: 'left' | 'right') => number): number =>
    Math.max(...sideNames.map((side) => of(after, side) - of(before, side)));
  return {
    layers: most(({ stand }, side) => stand[side].layers),
    mass: most(({ stand }, side) => stand[side].mass),
  };
}

/** Less is no difference that anybody would carry, kg. */
const LEAST_MASS = 0.05;

/** `3 more layers a stand`, `each stand 0.2 kg heavier`; none where it costs and saves nothing. */
export function priceText({ layers, mass }: Price): string[] {
  const count = Math.abs(layers);
  return [
    ...(layers === 0 ? [] : [`${count} ${layers > 0 ? 'more' : 'fewer'} ${count === 1 ? 'layer' : 'layers'} a stand`]),
    ...(Math.abs(mass) < LEAST_MASS
      ? []
      : [`each stand ${Math.abs(mass).toFixed(1)} kg ${mass > 0 ? 'heavier' : 'lighter'}`]),
  ];
}
