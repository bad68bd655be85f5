import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Plan, ReflectionPlan } from './document.ts';

/** A surface that sends some driver's sound to the head, with the way that speaks for it on each side. */
export type SurfaceReflections = Pick<ReflectionPlan, 'surface' | 'monitor'> & {
  readonly [Side in SideName]: ReflectionPlan | null;
};

/**
 * The way that speaks for each surface that some driver's sound lands on, in the surfaces' order: the one with the lowest
 * first notch. What every page tells of a surface it tells of this one.
 */
export function leadingReflections(reflections: readonly ReflectionPlan[]): ReflectionPlan[] {
  const leading: ReflectionPlan[] = [];
  for (const one of reflections) {
    if (!one.lands) continue;
    const place = leading.findIndex((other) => sameSurface(other, one));
    const before = leading[place];
    if (before === undefined) leading.push(one);
    else if ((one.firstNotch ?? Infinity) < (before.firstNotch ?? Infinity)) leading[place] = one;
  }
  return leading;
}

/** Every surface that sends sound of either loudspeaker to the head. */
export function surfaceReflections({ sides }: Plan): SurfaceReflections[] {
  const [left, right] = sideNames.map((side) => leadingReflections(sides[side].reflections));
  const all = [...(left ?? []), ...(right ?? [])];
  return all
    .filter((one, index) => all.findIndex((other) => sameSurface(other, one)) === index)
    .map((one) => ({
      surface: one.surface,
      monitor: one.monitor,
      left: left?.find((other) => sameSurface(other, one)) ?? null,
      right: right?.find((other) => sameSurface(other, one)) ?? null,
    }));
}

type Of = Pick<ReflectionPlan, 'surface' | 'monitor'>;
export const sameSurface = (a: Of, b: Of): boolean => a.surface === b.surface && a.monitor === b.monitor;
