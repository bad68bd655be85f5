import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jinc } from '$lib/acoustics/bessel.ts';
import { jincFall, jincNear } from '$lib/acoustics/jincTable.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

/** J₁(x), as the page's sound has it. */
const besselJ1 = (x: number): number => (x / 2) * jinc(x);

const RUNS = { numRuns: runs(1000) };

/** Decimal digits of the exact sums below: the largest term at x = 60 has 25 before the point. */
const DIGITS = 60;
const UNIT = 10n ** BigInt(DIGITS);

/** 2·J₁(x)/x for x = n/64, by the ascending series in whole numbers: exact but for the last of 60 decimals a term. */
function exactly(n: number): number {
  const square = (BigInt(n) * BigInt(n) * UNIT) / (4n * 64n * 64n);
  let [sum, term] = [0n, UNIT];
  for (let k = 1n; term !== 0n; k++) {
    sum += term;
    term = -(term * square) / (UNIT * k * (k + 1n));
  }
  return Number(sum / 10n ** BigInt(DIGITS - 18)) / 1e18;
}

test('is the exact series to 1e-10 all the way from 0 to 60, and J₁ with it', () => {
  let worst = 0;
  for (let n = 0; n <= 60 * 64; n++) {
    const exact = exactly(n);
    worst = Math.max(worst, Math.abs(jinc(n / 64) - exact), Math.abs(besselJ1(n / 64) - (exact * n) / 128));
  }
  expect(worst).toBeLessThan(1e-10);
});

test('has one value on both sides of where one series takes over from the other', () => {
  const below = jinc(12.5 - 1e-12);
  expect(Math.abs(jinc(12.5) - below)).toBeLessThan(1e-12);
});

test('is even and never over 1, J₁ is odd', () => {
  fc.assert(
    fc.property(numberFrom(0, 400), (x) => {
      expect(jinc(-x)).toBe(jinc(x));
      expect(besselJ1(-x)).toBe(-besselJ1(x));
      expect(Math.abs(jinc(x))).toBeLessThanOrEqual(1);
    }),
    RUNS,
  );
});

test('keeps Bessel’s integral, (1/π)·∫cos(τ − x·sin τ)dτ from 0 to π', () => {
  fc.assert(
    fc.property(numberFrom(0, 200), (x) => {
      // The rule of rectangles is exact for such a periodic function once it has more points than x.
      const points = 400;
      let sum = 0;
      for (let i = 0; i < points; i++) {
        const turn = (2 * Math.PI * i) / points;
        sum += Math.cos(turn - x * Math.sin(turn));
      }
      expect(Math.abs(besselJ1(x) - sum / points)).toBeLessThan(1e-10);
    }),
    RUNS,
  );
});

test('the table is the function to 1e-9, at its ends and past them too', () => {
  fc.assert(
    fc.property(fc.oneof(numberFrom(0, 1), numberFrom(0, 40), fc.constantFrom(0, 31.999999, 32, 32.000001)), (x) => {
      expect(Math.abs(jincNear(x) - jinc(x))).toBeLessThan(1e-9);
    }),
    RUNS,
  );
});

test('falls as 2·J₂(x)/x does', () => {
  // J₂ from the tables of a handbook of mathematical functions.
  const J2 = { 1: 0.1149034849, 2: 0.3528340286, 5: 0.0465651163, 10: 0.2546303137, 20: -0.1603413519 };
  for (const [x, value] of Object.entries(J2)) expect(jincFall(Number(x))).toBeCloseTo((2 * value) / Number(x), 6);
  expect(jincFall(0)).toBeCloseTo(0, 6);
  // Past the table's end: 2·J₂(40)/40 by scipy.special.jv.
  expect(jincFall(40)).toBeCloseTo((2 * -0.0010649747) / 40, 6);
});
