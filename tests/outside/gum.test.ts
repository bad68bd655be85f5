import { describe, expect, test } from 'vitest';
import { quantile, trials } from '$lib/geometry/trials.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { levenbergMarquardt } from '$lib/proof/levenbergMarquardt.ts';

/**
 * Worked examples of the Guide to the expression of uncertainty in measurement (JCGM 100:2008, annex H), inputs and results as
 * quoted in the tests of an open library for uncertainties; further digits computed.
 */

const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;

/** Covariance of two means of as many readings. */
function ofMeans(a: readonly number[], b: readonly number[]): number {
  const [ma, mb] = [mean(a), mean(b)];
  return a.reduce((sum, one, i) => sum + (one - ma) * ((b[i] ?? 0) - mb), 0) / (a.length * (a.length - 1));
}

describe('H.3, the calibration of a thermometer: a line', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fitted = (t0: number) => {
    const fit = levenbergMarquardt(([y1 = 0, y2 = 0]) => t.map((one, i) => (b[i] ?? 0) - y1 - y2 * (one - t0)), [0, 0], [1e-3, 1e-3]); // prettier-ignore
    if (!fit) throw new Error('a line is determined');
    const variance = fit.residuals.reduce((sum, one) => sum + one * one, 0) / (t.length - 2);
    const covariance = (i: number, j: number): number => variance * (fit.covariance[i]?.[j] ?? NaN);
    return { values: fit.values, s: Math.sqrt(variance), u: (i: number) => Math.sqrt(covariance(i, i)), covariance };
  };

  test('has its intercept, slope, their uncertainties and correlation', () => {
    const { values, s, u, covariance } = fitted(20);
    expect(values[0]).toBeCloseTo(-0.1712038, 6);
    expect(values[1]).toBeCloseTo(0.0021827, 6);
    expect(u(0)).toBeCloseTo(0.0028776, 6);
    expect(u(1)).toBeCloseTo(0.00066794, 7);
    expect(s).toBeCloseTo(0.00349756, 7);
    expect(covariance(0, 1) / (u(0) * u(1))).toBeCloseTo(-0.93043, 4);
  });

  test('has its correction at 30 °C: −0.1494 with 0.0041', () => {
    const { values, u } = fitted(30);
    expect(values[0]).toBeCloseTo(-0.14937681, 6);
    expect(u(0)).toBeCloseTo(0.0041386, 6);
  });
});

describe('H.2, resistance and reactance measured at once: correlated inputs', () => {
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
  const amperes = [19.663, 19.639, 19.64, 19.685, 19.678].map((one) => one / 1000);
  const radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const inputs = [volts, amperes, radians];
  const means = inputs.map(mean);
  const [vv, vi, vf, ii, fi, ff] = [ofMeans(volts, volts), ofMeans(volts, amperes), ofMeans(volts, radians), ofMeans(amperes, amperes), ofMeans(radians, amperes), ofMeans(radians, radians)]; // prettier-ignore

  /** The inverse of the lower Cholesky factor of their covariance, applied: residuals that know nothing of each other. */
  function whitened([dv = 0, di = 0, df = 0]: readonly number[]): number[] {
    const a = Math.sqrt(vv);
    const [b, d] = [vi / a, vf / a];
    const c = Math.sqrt(ii - b * b);
    const e = (fi - d * b) / c;
    const f = Math.sqrt(ff - d * d - e * e);
    const [x, y] = [dv / a, (di - (b * dv) / a) / c];
    return [x, y, (df - d * x - e * y) / f];
  }

  /** Three inputs determine three quantities: their covariance is that of the inputs, propagated to the first order. */
  function solved(model: (of: readonly number[]) => readonly number[], start: readonly number[]) {
    const off = (of: readonly number[]) => whitened(model(of).map((one, i) => (means[i] ?? 0) - one));
    const fit = levenbergMarquardt(off, start, start.map((one) => 1e-5 * one));
    if (!fit) throw new Error('three of three are determined');
    const u = (i: number): number => Math.sqrt(fit.covariance[i]?.[i] ?? NaN);
    const r = (i: number, j: number): number => (fit.covariance[i]?.[j] ?? NaN) / (u(i) * u(j));
    return { values: fit.values, u, r };
  }

  test('the inputs themselves', () => {
    expect(Math.sqrt(vv)).toBeCloseTo(3.209e-3, 6);
    expect(Math.sqrt(ii)).toBeCloseTo(9.471e-6, 9);
    expect(Math.sqrt(ff)).toBeCloseTo(7.521e-4, 7);
    expect(vi / Math.sqrt(vv * ii)).toBeCloseTo(-0.3553, 4);
  });

  test('R 127.732 with 0.071, X 219.847 with 0.295, correlated by −0.588', () => {
    const { values, u, r } = solved(([R = 0, X = 0, I = 0]) => [I * Math.hypot(R, X), I, Math.atan2(X, R)], [120, 220, 0.02]); // prettier-ignore
    expect(values[0]).toBeCloseTo(127.73217, 4);
    expect(values[1]).toBeCloseTo(219.84651, 4);
    expect(u(0)).toBeCloseTo(0.071071, 5);
    expect(u(1)).toBeCloseTo(0.295582, 5);
    expect(r(0, 1)).toBeCloseTo(-0.58843, 4);
  });

  test('Z 254.260 with 0.236, correlated with X by 0.993 and with R by −0.485', () => {
    const withX = solved(([Z = 0, X = 0, I = 0]) => [I * Z, I, Math.asin(X / Z)], [254, 219, 0.02]);
    expect(withX.values[0]).toBeCloseTo(254.2597, 4);
    expect(withX.u(0)).toBeCloseTo(0.236336, 5);
    expect(withX.r(0, 1)).toBeCloseTo(0.99251, 4);
    const withR = solved(([Z = 0, R = 0, I = 0]) => [I * Z, I, Math.acos(R / Z)], [254, 127, 0.02]);
    expect(withR.r(0, 1)).toBeCloseTo(-0.48526, 4);
  });
}); // prettier-ignore

test('H.1, a gauge block against a standard, by trials: 838 nm over 50 mm, with 34 nm, terms of the second order and all', () => {
  const LENGTH = 50_000_623;
  // A sum of twelve even shares from −½ to ½ has a standard deviation of 1.
  const normal = (off: Float64Array, from: number): number => off.subarray(from, from + 12).reduce((sum, one) => sum + one, 0); // prettier-ignore
  const spans = [...Array.from({ length: 36 }, () => 0.5), 2e-6, 1e-6, 0.05, Math.PI];
  const lengths = toTheEnd(
    trials(
      spans,
      (off) => {
        const [standard, difference] = [LENGTH + 25 * normal(off, 0), 215 + 9.681942 * normal(off, 12)];
        const [expansion, expansionApart, apart, turn] = [11.5e-6 + (off[36] ?? 0), off[37] ?? 0, off[38] ?? 0, off[39] ?? 0]; // prettier-ignore
        // The bath's mean, and its swing of half a degree as a sine has it.
        const warm = -0.1 + 0.2 * normal(off, 24) + 0.5 * Math.sin(turn);
        return standard + difference - standard * (expansionApart * warm + expansion * apart);
      },
      { seed: 1, count: 100_000 },
    ),
  );
  const middle = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
  const u = Math.sqrt(lengths.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (lengths.length - 1));
  // Four standard errors: of a mean u/√n, of a standard deviation u/√(2n).
  expect(Math.abs(middle - 50_000_838)).toBeLessThan((4 * 33.81) / Math.sqrt(100_000));
  expect(Math.abs(u - 33.81)).toBeLessThan((4 * 33.81) / Math.sqrt(200_000));
});

// JCGM 101:2008, 9.2, from memory; quantiles computed from the exact distributions of the sums, and their densities there.
test.each([
  ['four even spans of standard deviation 1', [1, 1, 1, 1], 3.879407, 0.0332],
  ['three, and one of standard deviation 10', [1, 1, 1, 10], 17.015814, 0.0167],
])('%s: their sum by trials is no normal distribution', (_, deviations, half, density) => {
  const count = 1_000_000;
  const spans = deviations.map((one) => one * Math.sqrt(3));
  const sums = toTheEnd(trials(spans, (off) => off.reduce((sum, one) => sum + one, 0), { seed: 2, count }));
  // Four standard errors of a quantile.
  const error = (4 * Math.sqrt((0.025 * 0.975) / count)) / density;
  expect(Math.abs(quantile(sums, 0.975) - half)).toBeLessThan(error);
  expect(Math.abs(quantile(sums, 0.025) + half)).toBeLessThan(error);
  expect(Math.abs(quantile(sums, 0.975) - 1.959964 * Math.hypot(...deviations))).toBeGreaterThan(error);
});
