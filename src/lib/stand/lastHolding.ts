/**
 * The last whole number from 0 to `count` for which `holds` is true, by halving: it is taken to change at most once, from
 * true to false. Null when it does not hold at 0 either.
 */
export function lastHolding(count: number, holds: (index: number) => boolean): number | null {
  if (!holds(0)) return null;
  if (holds(count)) return count;
  let [good, bad] = [0, count];
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
