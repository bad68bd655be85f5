import type { Point } from '$lib/geometry/point.ts';
import type { RodHole } from './rods.ts';

const CUBIC_MM_IN_CUBIC_M = 1e9;

/** The wood of the stacked layers: no rods, glue, veneer, feet or pad. */
export interface Wood {
  /** Of one slice, its rod holes deducted, mm². */
  readonly sliceArea: number;
  /** mm³. */
  readonly volume: number;
  /** kg. */
  readonly mass: number;
}

/**
 * @param thickness Of a layer, mm.
 * @param density kg/m³.
 */
export function woodOf(
  slice: readonly Point[],
  holes: readonly RodHole[],
  layers: number,
  thickness: number,
  density: number,
): Wood {
  const bored = holes.reduce((sum, { diameter }) => sum + (Math.PI * diameter ** 2) / 4, 0);
  const sliceArea = area(slice) - bored;
  const volume = sliceArea * layers * thickness;
  return { sliceArea, volume, mass: (volume / CUBIC_MM_IN_CUBIC_M) * density };
}

/** Of a counter-clockwise polygon, positive. */
function area(points: readonly Point[]): number {
  const doubled = points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  return doubled / 2;
}
