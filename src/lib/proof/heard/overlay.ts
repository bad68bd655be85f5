import { frequencies } from '$lib/acoustics/grid.ts';
import { decibels, FINE, SMOOTH } from '$lib/acoustics/response.ts';
import { smoothed } from '$lib/acoustics/smooth.ts';
import type { ResponseBand, ResponsePlan } from '$lib/solution/soundDocument.ts';
import type { KeptCurve } from './onGrid.ts';

/** A measured response over a predicted one: all at the frequencies that the measured one covers. */
export interface Overlay {
  /** Place of the first of them in the grid. */
  readonly from: number;
  /** Hz. */
  readonly frequencies: Float64Array;
  /** Window of all mean powers here, octaves, even in the logarithm of frequency, an octave a factor of 2. */
  readonly window: number;
  /** dB, aligned. */
  readonly measured: Float64Array;
  readonly predicted: Float64Array;
  /** Where the predicted one may lie, dB; null where that is not worked out. */
  readonly band: { readonly least: Float64Array; readonly most: Float64Array } | null;
  /** What was taken off the measured levels, dB: the mean difference of the thirds of an octave between these frequencies, Hz. */
  readonly aligned: { readonly by: number; readonly from: number; readonly to: number };
}

/** Where levels are aligned, Hz: over what the room decides, under where drivers beam and lines of sight matter most (rule of thumb). */
const ALIGN = [300, 3000] as const;

/** The fewest places that levels are aligned over: an octave. Where the measured one covers less of the range, all that it covers counts. */
const LEAST_PLACES = 48;

/**
 * Lays a measured response over a predicted one.
 *
 * @param already The window that the measured one was smoothed with before, octaves: the predicted one is, too.
 */
export function overlayOf(
  { from, levels }: KeptCurve,
  already: number,
  response: Pick<ResponsePlan, 'fine' | 'smooth'>,
  band: Pick<ResponseBand, 'least' | 'most'> | null,
): Overlay {
  const places = levels.length + 1;
  const within = (curve: Float64Array): Float64Array => curve.slice(from, from + places);
  const cells = Float64Array.from(levels, (level) => 10 ** (level / 10));
  const window = Math.max(FINE, already);
  const wider = (curve: Float64Array): Float64Array =>
    within(window > FINE ? smoothed(cellsOf(curve), window).map(decibels) : curve);
  const at = frequencies.slice(from, from + places);
  const thirds = smoothed(cells, SMOOTH).map((power) => 10 * Math.log10(power));
  const aligned = alignment(at, thirds, within(response.smooth));
  return {
    from,
    frequencies: at,
    window,
    // What is smoothed already is not smoothed by as much again: that would widen its window.
    measured: smoothed(cells, FINE).map((power) => 10 * Math.log10(power) - aligned.by),
    predicted: wider(response.fine),
    band: band && { least: wider(band.least), most: wider(band.most) },
    aligned,
  };
}

/** Mean powers between places of a curve in dB. */
const cellsOf = (curve: Float64Array): Float64Array =>
  Float64Array.from(
    { length: curve.length - 1 },
    (_, i) => (10 ** ((curve[i] ?? 0) / 10) + 10 ** ((curve[i + 1] ?? 0) / 10)) / 2,
  );

function alignment(at: Float64Array, measured: Float64Array, predicted: Float64Array): Overlay['aligned'] {
  const chosen = [...at.keys()].filter((i) => (at[i] ?? 0) >= ALIGN[0] && (at[i] ?? 0) <= ALIGN[1]);
  const over = chosen.length < LEAST_PLACES ? [...at.keys()] : chosen;
  const sum = over.reduce((sofar, i) => sofar + (measured[i] ?? 0) - (predicted[i] ?? 0), 0);
  return { by: sum / over.length, from: at[over[0] ?? 0] ?? 0, to: at[over.at(-1) ?? 0] ?? 0 };
}
