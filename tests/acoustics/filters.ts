import { over, plus, times, type Complex } from './complex.ts';

const one: Complex = [1, 0];

/** s = ju, with u the frequency over the crossover frequency. */
const at = (u: number): Complex => [0, u];

/** The denominators, as polynomials in s: Butterworth of order 3, and order 2 squared (Linkwitz-Riley of order 4). */
function denominator(order: 3 | 4, s: Complex): Complex {
  if (order === 3) return times(plus(s, one), plus(plus(times(s, s), s), one));
  const second = plus(plus(times(s, s), times([Math.SQRT2, 0], s)), one);
  return times(second, second);
}

const power = (s: Complex, n: number): Complex => (n === 0 ? one : times(s, power(s, n - 1)));

/** 1/D(s), at the crossover frequency if no other is given. */
export const lowPass = (order: 3 | 4, u = 1): Complex => over(one, denominator(order, at(u)));
/** sⁿ/D(s), in the same polarity, at the crossover frequency if no other is given. */
export const highPass = (order: 3 | 4, u = 1): Complex => over(power(at(u), order), denominator(order, at(u)));
