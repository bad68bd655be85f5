/** More halvings than this cannot shrink an interval of doubles further. */
const MOST_STEPS = 120;

/**
 * The place between `low` and `high` where `f` crosses zero, to the last digit that doubles can tell apart. Ridders'
 * method: each step at least halves the bracket, and near a simple root doubles the right digits.
 *
 * `f(low)` and `f(high)` must differ in sign (either may be 0); null when they do not.
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number | null {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0)) return null;
  for (let step = 0; step < MOST_STEPS; step++) {
    const middle = a + (b - a) / 2;
    if (middle === a || middle === b) break;
    const fm = f(middle);
    if (fm === 0) return middle;
    // Ridders' point lies inside the bracket; dust from the square root is held there.
    const shift = ((middle - a) * (fa < fb ? -1 : 1) * fm) / Math.sqrt(fm * fm - fa * fb);
    const x = Math.min(Math.max(middle + shift, Math.min(a, b)), Math.max(a, b));
    const fx = f(x);
    if (fx === 0) return x;
    if (fm < 0 !== fx < 0) [a, fa, b, fb] = [middle, fm, x, fx];
    else if (fa < 0 !== fx < 0) [b, fb] = [x, fx];
    else [a, fa] = [x, fx];
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
