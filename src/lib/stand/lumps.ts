import type { Vec3 } from '$lib/geometry/point.ts';
import { scale, add, vec3 } from '$lib/geometry/point.ts';

const CUBIC_MM_IN_CUBIC_M = 1e9;

/** A piece of something: mm³, kg/m³, and where its middle is, desk frame. */
export interface Lump {
  readonly volume: number;
  readonly density: number;
  readonly at: Vec3;
}

/** kg of a volume in mm³ at a density in kg/m³. */
export const massOf = (volume: number, density: number): number => (volume / CUBIC_MM_IN_CUBIC_M) * density;

/** Lumps as one: mm³, kg, and their centre of mass. */
export function gathered(lumps: readonly Lump[]): { volume: number; mass: number; centre: Vec3 } {
  const volume = lumps.reduce((sum, lump) => sum + lump.volume, 0);
  const mass = lumps.reduce((sum, lump) => sum + massOf(lump.volume, lump.density), 0);
  const moment = lumps.reduce(
    (sum, { volume: some, density, at }) => add(sum, scale(at, massOf(some, density))),
    vec3(0, 0, 0),
  );
  return { volume, mass, centre: scale(moment, 1 / mass) };
}
