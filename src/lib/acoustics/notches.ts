import type { Transfer } from './branches.ts';
import { frequencies } from './grid.ts';
import { decibels } from './response.ts';

/** Where a curve dips. */
export interface Dip {
  /** Its place in the curve. */
  readonly index: number;
  /** Level at its bottom, dB. */
  readonly level: number;
  /** How far the curve has to climb from it to both sides before it falls lower again, dB. */
  readonly depth: number;
}

/** A dip in a response over the grid. */
export interface Notch extends Dip {
  /** Hz. */
  readonly frequency: number;
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

/** The dips of a curve in dB at least `NOTCH_DEPTH` deep: its local minima, first to last. */
export function dipsOf(curve: Float64Array): Dip[] {
  const found: Dip[] = [];
  for (let index = 1; index < curve.length - 1; index++) {
    const level = curve[index] ?? 0;
    if (!(level < (curve[index - 1] ?? 0) && level <= (curve[index + 1] ?? 0))) continue;
    const depth = Math.min(climb(curve, index, -1), climb(curve, index, 1)) - level;
    if (depth >= NOTCH_DEPTH) found.push({ index, level, depth });
  }
  return found;
}

/**
 * The notches of a curve in dB over the grid, lowest frequency first, each with the remedy that fills it most. `sum` is the
 * pressure that the curve was made from.
 */
export const notchesOf = (curve: Float64Array, sum: Transfer, remedies: readonly Remedy[]): Notch[] =>
  dipsOf(curve).map((dip) => ({
    ...dip,
    frequency: frequencies[dip.index] ?? 0,
    ...causeOf(dip.index, sum, remedies),
  }));

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
