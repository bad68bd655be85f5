import 'fmin';

const ROUNDS = 6;

/**
 * The least value of `f` near `start` by fmin's downhill simplex, started again from where it stopped. Its step that
 * shrinks the simplex assigns to an undeclared variable and throws; `sigma: 1` ends the round there instead, and the next
 * round begins with a fresh simplex.
 */
export function minimise(
  f: (x: readonly number[]) => number,
  start: readonly number[],
): { readonly x: readonly number[]; readonly fx: number } {
  let best = { x: start, fx: f(start) };
  for (let round = 0; round < ROUNDS; round += 1) {
    const found = fmin.nelderMead(f, [...best.x], { maxIterations: 2000, minErrorDelta: 1e-12, sigma: 1 });
    if (found.fx <= best.fx) best = { x: [...found.x], fx: found.fx };
  }
  return best;
}
