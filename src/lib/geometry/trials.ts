import { random } from './random.ts';

/** Trials between two rests: some milliseconds of them. */
const AT_ONCE = 500;

/**
 * What comes of values that each lie anywhere within their span with equal chance, all drawn at once, again and again: the
 * propagation of distributions of JCGM 101:2008, 7. The same seed gives the same trials on every machine.
 *
 * Yields the share that is done, 0…1, every few milliseconds.
 *
 * @param spans Half the width of each value's span, 0 or more, in its unit.
 * @param outcome Of one draw, how far each value is off; NaN where there is none, which stays one.
 * @returns the outcomes, smallest first; those that are NaN last
 */
export function* trials(
  spans: readonly number[],
  outcome: (off: Float64Array) => number,
  { seed, count }: { readonly seed: number; readonly count: number },
): Generator<number, Float64Array> {
  const { share } = random(seed);
  const off = new Float64Array(spans.length);
  const outcomes = new Float64Array(count);
  for (let trial = 0; trial < count; trial += 1) {
    if (trial > 0 && trial % AT_ONCE === 0) yield trial / count;
    for (const [index, span] of spans.entries()) off[index] = span * (2 * share() - 1);
    outcomes[trial] = outcome(off);
  }
  return outcomes.sort();
}

/** The outcome that a share of all does not pass; `share` over 0 to 1, of outcomes in order, one at least. */
export const quantile = (sorted: Float64Array, share: number): number =>
  sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;

/** Of outcomes in order, how many are at most `limit`. NaN is never. */
export function countWithin(sorted: Float64Array, limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] ?? NaN) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Of the normal distribution: 95 % lie within so many standard deviations. */
const Z95 = 1.959963984540054;

/**
 * How sure a share is that was seen in `of` trials: the interval of Wilson (Journal of the American Statistical Association
 * 22, 1927) at 95 %. `hits` 0 to `of`, `of` over 0.
 */
export function shareInterval(hits: number, of: number): { readonly low: number; readonly high: number } {
  const [p, z2] = [hits / of, Z95 ** 2];
  const whole = 1 + z2 / of;
  const centre = (p + z2 / (2 * of)) / whole;
  const half = (Z95 * Math.sqrt((p * (1 - p)) / of + z2 / (4 * of * of))) / whole;
  return { low: Math.max(0, centre - half), high: Math.min(1, centre + half) };
}
