import type { Transfer } from './branches.ts';
import { smoothed } from './smooth.ts';

/** What arrives at the head over the frequencies of the grid, dB; 0 dB is the loudspeaker's own flat direct sound on its axis. */
export interface Response {
  /** As computed, at each frequency by itself. */
  readonly level: Float64Array;
  /** The mean power over 1/24 octave. */
  readonly fine: Float64Array;
  /** The mean power over 1/3 octave. */
  readonly smooth: Float64Array;
}

export const FINE = 1 / 24;
export const SMOOTH = 1 / 3;

/** No level lies under this, dB: an outright null has none. */
const LEAST_LEVEL = -120;

/**
 * The response from a complex pressure and its mean power in each cell of the grid (`cellPowers`). `reference` is the
 * pressure that counts as 0 dB; `evened` divides the result at each frequency (see `evenedAtDesign`).
 */
export function responseOf(sum: Transfer, cells: Float64Array, reference: number, evened: Float64Array): Response {
  const over = evened.map((by) => 1 / (reference * by) ** 2);
  const between = cells.map((power, i) => power * (((over[i] ?? 0) + (over[i + 1] ?? 0)) / 2));
  return {
    level: sum.re.map((re, i) => decibels((re * re + (sum.im[i] ?? 0) ** 2) * (over[i] ?? 0))),
    fine: smoothed(between, FINE).map(decibels),
    smooth: smoothed(between, SMOOTH).map(decibels),
  };
}

/** dB of a ratio of powers, −120 at the least. */
export const decibels = (power: number): number => Math.max(10 * Math.log10(power), LEAST_LEVEL);

/** dB of one power re another, from −120 to 120: in a null of its beam a driver has no direct sound to compare with. */
export function levelAgainst(power: number, reference: number): number {
  if (power === 0) return decibels(0);
  return Math.min(decibels(power / reference), -decibels(0));
}
