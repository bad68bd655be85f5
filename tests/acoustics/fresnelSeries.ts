import { plus, times, type Complex } from './complex.ts';

const over = ([a, b]: Complex): Complex => [a / (a * a + b * b), -b / (a * a + b * b)];

/**
 * ∫₀ᵛ e^(−jπt²/2)dt = C − jS: the power series for small v, and the continued fraction of the complementary error function
 * for large (Abramowitz and Stegun 7.3.11, 7.3.13 and 7.1.14).
 */
export function fresnel(v: number): Complex {
  const x = Math.abs(v);
  const sign = Math.sign(v);
  if (x < 1.5) {
    let [term, re, im]: [Complex, number, number] = [[x, 0], 0, 0];
    for (let n = 0; n < 60; n++) {
      re += term[0] / (2 * n + 1);
      im += term[1] / (2 * n + 1);
      term = times(term, [0, (-Math.PI * x * x) / (2 * (n + 1))]);
    }
    return [sign * re, sign * im];
  }
  // 1/(b₀ + a₁/(b₁ + a₂/(b₂ + …))) with bₙ = 1 − jπx² + 4n and aₙ = −(2n − 1)·2n, from its far end.
  let fraction: Complex = [1, 0];
  for (let n = 400; n >= 0; n--) {
    const below: Complex = n === 400 ? [0, 0] : times([-(2 * n + 1) * (2 * n + 2), 0], fraction);
    fraction = over(plus([1 + 4 * n, -Math.PI * x * x], below));
  }
  const h = times([x, -x], fraction);
  const turned = times([Math.cos((Math.PI * x * x) / 2), Math.sin((Math.PI * x * x) / 2)], h);
  const [c, s] = times([0.5, 0.5], [1 - turned[0], -turned[1]]);
  return [sign * c, -sign * s];
}
