import { frequencies } from '$lib/acoustics/grid.ts';
import { LEAST_CELLS } from '$lib/project/limits.ts';
import { DESK_KNOWN_FROM } from '$lib/acoustics/leftOut.ts';
import type { MeasuredCurve } from './curve.ts';

/** A measured response as the project keeps it: its mean power from each frequency of the grid to the next. */
export interface KeptCurve {
  /** The first cell, by its place: it ends at the next frequency of the grid. */
  readonly from: number;
  /** dB, to a hundredth, of that cell and those after it. */
  readonly levels: readonly number[];
  /** The widest step from one measured frequency to the next, octaves, from where the prediction is told up. */
  readonly step: number;
}

/** Steps of a kept level, dB: far under what any microphone repeats. */
const HUNDREDTH = 100;

/**
 * A response on the grid of everything here: mean power over each cell that it covers whole, with straight lines of level
 * over the logarithm of frequency from one measured frequency to the next. What lies outside 20 Hz to 20 kHz is left out.
 * Null where it covers less than an octave of it.
 */
export function onGrid({ frequencies: measured, levels }: MeasuredCurve): KeptCurve | null {
  const [lowest, highest] = [measured[0] ?? Infinity, measured.at(-1) ?? 0];
  const from = frequencies.findIndex((f) => f >= lowest);
  const to = frequencies.findLastIndex((f) => f <= highest);
  if (from < 0 || to - from < LEAST_CELLS) return null;
  const kept: number[] = [];
  // The stretch between two measured frequencies that holds the cell's lower end.
  let at = 0;
  for (let cell = from; cell < to; cell++) {
    const [low, high] = [frequencies[cell] ?? 0, frequencies[cell + 1] ?? 0];
    while ((measured[at + 1] ?? Infinity) <= low) at += 1;
    let sum = 0;
    for (let i = at; (measured[i] ?? Infinity) < high; i++) sum += powerBetween(measured, levels, i, low, high);
    kept.push(Math.round(10 * Math.log10(sum / Math.log(high / low)) * HUNDREDTH) / HUNDREDTH);
  }
  return { from, levels: kept, step: widestStep(measured) };
}

/** Power over the logarithm of frequency, from one measured frequency to the next as far as they lie between two others. */
function powerBetween(measured: Float64Array, levels: Float64Array, i: number, low: number, high: number): number {
  const [first, last] = [measured[i] ?? 0, measured[i + 1] ?? 0];
  const [start, end] = [Math.max(first, low), Math.min(last, high)];
  const [a, b] = [levels[i] ?? 0, levels[i + 1] ?? 0];
  const levelAt = (f: number): number =>
    f === first ? a : f === last ? b : a + ((b - a) * Math.log(f / first)) / Math.log(last / first);
  return meanPower(levelAt(start), levelAt(end)) * Math.log(end / start);
}

const NEPERS = Math.LN10 / 10;

/** Levels that differ by less than this have the power of their middle, dB: what is left out is its square. */
const ALIKE = 1e-6;

/** Mean power along a straight line from one level to another, dB. */
function meanPower(a: number, b: number): number {
  const difference = NEPERS * (b - a);
  return Math.abs(difference) < ALIKE
    ? 10 ** ((a + b) / 20)
    : (10 ** (b / 10) - 10 ** (a / 10)) / difference;
} // prettier-ignore

function widestStep(measured: Float64Array): number {
  let widest = 0;
  for (let i = 1; i < measured.length; i++) {
    const [low, high] = [measured[i - 1] ?? 0, measured[i] ?? 0];
    if (high > DESK_KNOWN_FROM && low < (frequencies.at(-1) ?? 0)) widest = Math.max(widest, Math.log2(high / low));
  }
  return widest;
}
