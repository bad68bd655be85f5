import type { Fitted } from './fitStanding.ts';
import type { Taken } from './taken.ts';

/** Readings that fit, and those that contradict. */
export interface Sorted {
  readonly fitted: Fitted;
  /** Places in the list of what was left out, as it contradicts all the rest. */
  readonly odd: readonly number[];
  /** Places of readings of which some must be wrong, where the rest cannot say which: none of them is left out. */
  readonly unclear: readonly number[];
}

/** Of a hundred sets of readings with nothing wrong, one is called contradictory. Standard deviations of a normal. */
const ONE_IN_A_HUNDRED = 2.326348;

/** By so much more must leaving one out help than leaving out another, for it to be named: e³ times as likely. */
const CLEARLY = 6;

/**
 * The least sum of squares that one set in a hundred exceeds by chance.
 * E. B. Wilson and M. M. Hilferty, Proc. Natl. Acad. Sci. 17 (1931), within 1 % of the tables.
 */
export const chiSquaredLimit = (spare: number): number =>
  spare === 0 ? Infinity : spare * (1 - 2 / (9 * spare) + ONE_IN_A_HUNDRED * Math.sqrt(2 / (9 * spare))) ** 3;

const agrees = ({ chiSquared, spare }: Fitted): boolean => chiSquared <= chiSquaredLimit(spare);

/**
 * Finds the readings that cannot be: as long as they do not agree, the one goes whose leaving helps by far the most. Where
 * several would do as well, nothing is left out and all of them are named.
 *
 * @param fit Of some of the readings; null when they cannot be reckoned with.
 */
export function sortOut(readings: readonly Taken[], fit: (some: readonly Taken[]) => Fitted | null): Sorted | null {
  let kept = readings.map((_, place) => place);
  const chosen = (places: readonly number[]): readonly Taken[] => places.flatMap((place) => readings[place] ?? []);
  const odd: number[] = [];
  for (;;) {
    const fitted = fit(chosen(kept));
    if (!fitted) return null;
    if (agrees(fitted)) return { fitted, odd, unclear: [] };
    const without = kept
      .flatMap((place) => {
        const rest = fit(chosen(kept.filter((one) => one !== place)));
        return rest ? [{ place, rest }] : [];
      })
      .sort((a, b) => a.rest.chiSquared - b.rest.chiSquared);
    const [first, second] = without;
    if (!first || (second && second.rest.chiSquared - first.rest.chiSquared < CLEARLY)) {
      const alike = without.filter(({ rest }) => rest.chiSquared - (first?.rest.chiSquared ?? 0) < CLEARLY);
      return { fitted, odd, unclear: alike.map(({ place }) => place).sort((a, b) => a - b) };
    }
    odd.push(first.place);
    kept = kept.filter((place) => place !== first.place);
  }
}
