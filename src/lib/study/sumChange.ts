import type { CrossoverSum } from '$lib/acoustics/crossover.ts';
import { CANCELLED } from '$lib/acoustics/driversMeet.ts';

type Sum = Pick<CrossoverSum, 'sumKnown' | 'sumLevel'>;

/** How much the sum at each crossover differs from what it was, dB; null where nothing is known of it. */
export const sumChanges = (now: readonly Sum[], before: readonly Pick<Sum, 'sumLevel'>[]): (number | null)[] =>
  now.map(({ sumKnown, sumLevel }, index) =>
    sumKnown ? audible(sumLevel) - audible(before[index]?.sumLevel ?? null) : null,
  );

/** The change for the worse, dB, 0 where there is none; null where one of them is not known. */
export function worstChange(changes: readonly (number | null)[]): number | null {
  const known = changes.filter((change) => change !== null);
  return known.length < changes.length ? null : Math.min(0, ...known);
}

/** Level of a sum, dB; what cancels outright is held at the least that counts. */
const audible = (level: number | null): number => level ?? 20 * Math.log10(CANCELLED);
