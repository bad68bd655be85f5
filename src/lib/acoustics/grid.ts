/** Hz: the range of hearing, as far as loudspeakers go. */
const LOWEST = 20;
const HIGHEST = 20000;

/** Enough for 48 to the octave over the ten octaves between. */
export const FREQUENCIES = 480;

/** Octaves from one frequency of the grid to the next. */
export const OCTAVES_APART = Math.log2(HIGHEST / LOWEST) / (FREQUENCIES - 1);

/** The frequencies that everything over frequency is computed at, Hz: 480 from 20 Hz to 20 kHz, evenly in octaves, both ends included. */
export const frequencies: Readonly<Float64Array> = Float64Array.from(
  { length: FREQUENCIES },
  (_, i) => LOWEST * 2 ** (OCTAVES_APART * i),
);

/** Neighbouring places of the grid: from the first up to but not including the end. */
export interface Places {
  readonly first: number;
  readonly end: number;
}

export const EVERYWHERE: Places = { first: 0, end: FREQUENCIES };

/** The places whose frequencies lie from one in Hz to another, both included. */
export function placesFrom(low: number, high: number): Places {
  const first = frequencies.findIndex((f) => f >= low);
  const end = frequencies.findIndex((f) => f > high);
  return { first: first < 0 ? FREQUENCIES : first, end: end < 0 ? FREQUENCIES : end };
}

/** The place of the grid nearest to a frequency in Hz, in octaves. */
export const nearestPlace = (frequency: number): number =>
  Math.min(FREQUENCIES - 1, Math.max(0, Math.round(Math.log2(frequency / LOWEST) / OCTAVES_APART)));
