/** fmin's build is a script that puts its functions on the global object and exports nothing. */
declare module 'fmin';

declare const fmin: {
  /** Downhill simplex. Moves `start` itself; `sigma: 1` stops it where it would otherwise shrink the simplex. */
  nelderMead(
    f: (x: readonly number[]) => number,
    start: number[],
    parameters?: { maxIterations?: number; minErrorDelta?: number; sigma?: number },
  ): { readonly x: readonly number[]; readonly fx: number };
};
