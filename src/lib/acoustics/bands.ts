import type { Crossover, Driver } from '$lib/project/project.ts';
import { filtersOf } from './branches.ts';
import { frequencies } from './grid.ts';

/** The frequencies that a driver plays, Hz, both ends included; nothing where `low` is over `high`. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/**
 * The band of each driver, in their order: from its highest high-pass to its lowest low-pass crossover, at each of which
 * it is as loud as its neighbour; without crossovers the whole range of hearing, 20 Hz to 20 kHz.
 */
export const bandsOf = (drivers: readonly Driver[], crossovers: readonly Crossover[]): Band[] =>
  drivers.map((driver) => {
    const filters = filtersOf(driver, drivers, crossovers);
    const at = (high: boolean): number[] =>
      filters.filter((one) => one.high === high).map(({ frequency }) => frequency);
    return {
      low: Math.max(frequencies[0] ?? 0, ...at(true)),
      high: Math.min(frequencies.at(-1) ?? Infinity, ...at(false)),
    };
  });
