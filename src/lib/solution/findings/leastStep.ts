/**
 * The least number of steps over 0 and up to `most` after which a test passes, where it passes from some number on: by
 * doubling, then halving. Null when none of the numbers tried passes.
 */
export function leastStep(passes: (steps: number) => boolean, most: number): number | null {
  let [failed, good] = [0, 1];
  while (!passes(good)) {
    if (good >= most) return null;
    failed = good;
    good = Math.min(most, 2 * good);
  }
  while (good - failed > 1) {
    const middle = Math.floor((failed + good) / 2);
    if (passes(middle)) good = middle;
    else failed = middle;
  }
  return good;
}
