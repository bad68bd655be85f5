/** Below this the power series is used, from it on the asymptotic one; each errs by less than 1e-12 there. */
const CHANGE = 12.5;

/** Terms of the power series: the 40th at `CHANGE` is under 1e-26. */
const SERIES_TERMS = 40;

/** Terms of the asymptotic series, the even and the odd ones together; the smallest one at `CHANGE` is near the 25th. */
const ASYMPTOTIC_TERMS = 24;

/** (−1)^k / (k! (k + 1)!), by which (x²/4)^k counts in 2·J₁(x)/x. */
const series = Float64Array.from({ length: SERIES_TERMS }, (_, k) => {
  let term = 1;
  for (let i = 1; i <= k; i++) term /= -i * (i + 1);
  return term;
});

/** (4ν² − 1²)(4ν² − 3²)…(4ν² − (2k − 1)²) / (k! 8^k) at ν = 1, by which x^−k counts, signs of P and Q included. */
const asymptotic = Float64Array.from({ length: ASYMPTOTIC_TERMS }, (_, k) => {
  let term = 1;
  for (let i = 1; i <= k; i++) term *= (4 - (2 * i - 1) ** 2) / (8 * i);
  return Math.floor(k / 2) % 2 === 0 ? term : -term;
});

/**
 * 2·J₁(x)/x, the directivity function of a circular piston; 1 at 0, even in x. Absolute error under 1e-10 for any finite
 * x. By the ascending series of J₁ and, for large x, by Hankel's asymptotic one, √(2/πx)·(P·cos χ − Q·sin χ) with
 * χ = x − 3π/4 (both in any handbook of mathematical functions).
 */
export function jinc(x: number): number {
  const size = Math.abs(x);
  return size < CHANGE ? ascending(size * size * 0.25) : (2 / size) * hankel(size);
}

function ascending(quarterSquare: number): number {
  // Small arguments need few terms: past 2·√(x²/4) + 10 they no longer count.
  let k = Math.min(SERIES_TERMS - 1, Math.ceil(2 * Math.sqrt(quarterSquare)) + 12);
  let sum = 0;
  for (; k >= 0; k--) sum = sum * quarterSquare + (series[k] ?? 0);
  return sum;
}

function hankel(x: number): number {
  const step = 1 / (x * x);
  let [p, q] = [0, 0];
  for (let k = ASYMPTOTIC_TERMS - 2; k >= 0; k -= 2) {
    p = p * step + (asymptotic[k] ?? 0);
    q = q * step + (asymptotic[k + 1] ?? 0);
  }
  q /= x;
  // cos and sin of x − 3π/4 from those of x, which keeps the digits of a large x.
  const [sine, cosine] = [Math.sin(x), Math.cos(x)];
  return Math.sqrt(1 / (Math.PI * x)) * (p * (sine - cosine) + q * (sine + cosine));
}
