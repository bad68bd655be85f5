import type { Vec3 } from '$lib/geometry/point.ts';
import { scale, add, vec3 } from '$lib/geometry/point.ts';

const CUBIC_MM_IN_CUBIC_M = 1e9;

/** A piece of something: mm³, kg/m³, and where its middle is, desk frame. */
export interface PointMass {
  readonly volume: number;
  readonly density: number;
  readonly at: Vec3;
}

/** kg of a volume in mm³ at a density in kg/m³. */
export const massOf = (volume: number, density: number): number => (volume / CUBIC_MM_IN_CUBIC_M) * density;

/** Point masses as one: mm³, kg, and their centre of mass. */
export function gathered(pointMasses: readonly PointMass[]): { volume: number; mass: number; centre: Vec3 } {
  const volume = pointMasses.reduce((sum, pointMass) => sum + pointMass.volume, 0);
  const mass = pointMasses.reduce((sum, pointMass) => sum + massOf(pointMass.volume, pointMass.density), 0);
  const moment = pointMasses.reduce(
    (sum, { volume: some, density, at }) => add(sum, scale(at, massOf(some, density))),
    vec3(0, 0, 0),
  );
  return { volume, mass, centre: scale(moment, 1 / mass) };
}
