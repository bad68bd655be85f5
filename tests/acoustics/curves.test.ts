import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FREQUENCIES, frequencies, OCTAVES_APART } from '$lib/acoustics/grid.ts';
import { NOTCH_DEPTH, notchesOf } from '$lib/acoustics/notches.ts';
import { decibels, FINE, responseOf, SMOOTH } from '$lib/acoustics/response.ts';
import { smoothed } from '$lib/acoustics/smooth.ts';
import { silence } from '$lib/acoustics/wave.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const powers = fc
  .array(numberFrom(0, 10), { minLength: FREQUENCIES, maxLength: FREQUENCIES })
  .map((list) => Float64Array.from(list));

test('the grid runs from 20 Hz to 20 kHz in equal ratios', () => {
  expect(frequencies).toHaveLength(480);
  expect(frequencies[0]).toBe(20);
  expect(frequencies[479]).toBeCloseTo(20000, 8);
  for (let i = 1; i < 480; i++)
    expect(Math.log2((frequencies[i] ?? NaN) / (frequencies[i - 1] ?? NaN))).toBeCloseTo(OCTAVES_APART, 12);
});

describe('smoothing', () => {
  test('is the mean over the window, worked out piece by piece', () => {
    fc.assert(
      fc.property(powers, fc.constantFrom(FINE, SMOOTH, 1), (power, octaves) => {
        const reach = octaves / OCTAVES_APART / 2;
        smoothed(power, octaves).forEach((mean, i) => {
          let [sum, width] = [0, 0];
          power.forEach((value, k) => {
            const part = Math.max(0, Math.min(k + 0.5, i + reach) - Math.max(k - 0.5, i - reach));
            sum += part * value;
            width += part;
          });
          expect(mean).toBeCloseTo(sum / width, 9);
        });
      }),
      { numRuns: runs(10) },
    );
  });

  test('leaves a level curve level and never leaves the span of its values', () => {
    expect([...smoothed(new Float64Array(480).fill(3), SMOOTH)].every((mean) => Math.abs(mean - 3) < 1e-12)).toBe(true);
    fc.assert(
      fc.property(powers, (power) => {
        const mean = smoothed(power, SMOOTH);
        expect(Math.max(...mean)).toBeLessThanOrEqual(Math.max(...power) + 1e-9);
        expect(Math.min(...mean)).toBeGreaterThanOrEqual(Math.min(...power) - 1e-9);
      }),
      { numRuns: runs(50) },
    );
  });
});

test('a response is the power over the reference’s, evened out, and silence has the least level', () => {
  const sum = silence();
  sum.re.fill(3);
  sum.im.fill(4);
  const { level, fine, smooth } = responseOf(sum, 2, new Float64Array(480).fill(0.5));
  for (const curve of [level, fine, smooth]) expect(curve[240]).toBeCloseTo(20 * Math.log10(5), 9);
  expect(responseOf(silence(), 1, new Float64Array(480).fill(1)).level[0]).toBe(-120);
});

describe('notches', () => {
  /** A pressure whose level is 0 dB but for dips at some places, so many dB deep. */
  const withDips = (dips: Readonly<Record<number, number>>) => {
    const sum = silence();
    sum.re.fill(1);
    for (const [at, depth] of Object.entries(dips)) sum.re[Number(at)] = 10 ** (-depth / 20);
    return { sum, curve: sum.re.map((re) => decibels(re * re)) };
  };

  test('are the dips deep enough, each with its depth', () => {
    const { sum, curve } = withDips({ 100: 10, 200: NOTCH_DEPTH - 0.1, 300: NOTCH_DEPTH + 0.1 });
    const found = notchesOf(curve, sum, []);
    expect(found.map(({ index }) => index)).toEqual([100, 300]);
    expect(found[0]?.depth).toBeCloseTo(10, 9);
    expect(found[0]).toMatchObject({ frequency: frequencies[100], cause: null, fill: 0 });
  });

  test('a dip on the slope of a deeper one counts by how far the curve climbs between them', () => {
    const { sum, curve } = withDips({ 100: 20, 101: 6, 102: 12 });
    expect(notchesOf(curve, sum, []).map(({ index, depth }) => [index, Math.round(depth)])).toEqual([
      [100, 20],
      [102, 6],
    ]);
  });

  test('name the remedy that fills them most, and none that makes them deeper', () => {
    const { sum, curve } = withDips({ 100: 10 });
    const level = (power: number) => ({ power: () => power });
    expect(notchesOf(curve, sum, [level(0.8), level(0.95), level(0.9)])[0]?.cause).toBe(1);
    expect(notchesOf(curve, sum, [level(1e-9)])[0]).toMatchObject({ cause: null, fill: 0 });
  });
});
