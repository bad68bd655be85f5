import type { Transfer } from './branches.ts';
import { frequencies } from './grid.ts';
import { decibels } from './response.ts';

/** A dip in a response. */
export interface Notch {
  /** Its place among the frequencies of the grid, and its frequency, Hz. */
  readonly index: number;
  readonly frequency: number;
  /** Level at its bottom, dB. */
  readonly level: number;
  /** How far the response has to climb from it to both sides before it falls lower again, dB. */
  readonly depth: number;
  /** Which remedy fills it most, by its place among the remedies; null when none fills it at all. */
  readonly cause: number | null;
  /** By how much that fills it, dB, over 0; 0 without a cause. */
  readonly fill: number;
}

/** A response that could have been: what the pressure would be with one cause of trouble taken away. */
export interface Remedy {
  /** Power at a place of the grid, in the units of the response's own pressure squared. */
  readonly power: (index: number) => number;
}

/** A dip shallower than this is not called a notch, dB: half the power. */
export const NOTCH_DEPTH = 3;

/**
 * The notches of a curve in dB over the grid, lowest frequency first: its local minima at least `NOTCH_DEPTH` deep, each
 * with the remedy that fills it most. `sum` is the pressure that the curve was made from.
 */
export function notchesOf(curve: Float64Array, sum: Transfer, remedies: readonly Remedy[]): Notch[] {
  const found: Notch[] = [];
  for (let index = 1; index < curve.length - 1; index++) {
    const level = curve[index] ?? 0;
    if (!(level < (curve[index - 1] ?? 0) && level <= (curve[index + 1] ?? 0))) continue;
    const depth = Math.min(climb(curve, index, -1), climb(curve, index, 1)) - level;
    if (depth < NOTCH_DEPTH) continue;
    found.push({ index, frequency: frequencies[index] ?? 0, level, depth, ...causeOf(index, sum, remedies) });
  }
  return found;
}

/** The highest level on the way from a minimum, in steps of ±1, before the curve falls under it. */
function climb(curve: Float64Array, from: number, step: 1 | -1): number {
  const bottom = curve[from] ?? 0;
  let highest = bottom;
  for (let i = from + step; i >= 0 && i < curve.length; i += step) {
    const level = curve[i] ?? 0;
    if (level < bottom) break;
    if (level > highest) highest = level;
  }
  return highest;
}

function causeOf(index: number, sum: Transfer, remedies: readonly Remedy[]): { cause: number | null; fill: number } {
  const now = about(index, (i) => powerAt(sum, i));
  let best: { cause: number | null; fill: number } = { cause: null, fill: 0 };
  remedies.forEach((remedy, cause) => {
    const fill = decibels(about(index, remedy.power)) - decibels(now);
    if (fill > best.fill) best = { cause, fill };
  });
  return best;
}

/** The mean over a place and its two neighbours, about 1/16 octave. */
const about = (index: number, power: (i: number) => number): number =>
  (power(index - 1) + power(index) + power(index + 1)) / 3;

const powerAt = (sum: Transfer, i: number): number => (sum.re[i] ?? 0) ** 2 + (sum.im[i] ?? 0) ** 2;
