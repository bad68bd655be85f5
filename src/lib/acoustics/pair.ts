import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover } from '$lib/project/project.ts';

/**
 * The two drivers of a crossover, the lower first: the one with the smaller height along the baffle; of two at one
 * height, the second that the crossover names. Throws when it names a driver that is not among `drivers`, which no
 * parsed project does.
 */
export function lowerAndUpper(
  { between }: Crossover,
  drivers: readonly PlacedDriver[],
): readonly [PlacedDriver, PlacedDriver] {
  const [first, second] = [named(between[0], drivers), named(between[1], drivers)];
  return first.driver.height < second.driver.height ? [first, second] : [second, first];
}

function named(name: string, drivers: readonly PlacedDriver[]): PlacedDriver {
  const found = drivers.find(({ driver }) => driver.name === name);
  if (!found) throw new Error(`the crossover names "${name}", which is none of the drivers`);
  return found;
}
