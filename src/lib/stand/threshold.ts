/** Halvings of the searched range: a range of metres comes down to the rounding of its sums. */
const HALVINGS = 50;

/**
 * The number where `holds` changes from true to false between `holding` (where it holds) and `failing` (where it does
 * not), to the range's 2⁻⁵⁰ and always on the side where it holds. Either end may be the larger one.
 */
export function threshold(holding: number, failing: number, holds: (value: number) => boolean): number {
  let good = holding;
  let bad = failing;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
