import { over, plus, times, type Complex } from './complex.ts';

/** s = j: the crossover frequency itself. */
const s: Complex = [0, 1];
const one: Complex = [1, 0];

/** The denominators, as polynomials in s: Butterworth of order 3, and order 2 squared (Linkwitz-Riley of order 4). */
const denominator = {
  3: times(plus(s, one), plus(plus(times(s, s), s), one)),
  4: times(second(), second()),
} as const;

function second(): Complex {
  return plus(plus(times(s, s), times([Math.SQRT2, 0], s)), one);
}

const power = (n: number): Complex => (n === 0 ? one : times(s, power(n - 1)));

/** 1/D(s) at the crossover frequency. */
export const lowPass = (order: 3 | 4): Complex => over(one, denominator[order]);
/** sⁿ/D(s) at the crossover frequency, in the same polarity. */
export const highPass = (order: 3 | 4): Complex => over(power(order), denominator[order]);
