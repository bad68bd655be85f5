import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellPowers } from '$lib/acoustics/cells.ts';
import { FREQUENCIES, frequencies, OCTAVES_APART } from '$lib/acoustics/grid.ts';
import { NOTCH_DEPTH, notchesOf } from '$lib/acoustics/notches.ts';
import { decibels, FINE, responseOf, SMOOTH } from '$lib/acoustics/response.ts';
import { smoothed } from '$lib/acoustics/smooth.ts';
import { silence } from '$lib/acoustics/wave.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const cells = fc
  .array(numberFrom(0, 10), { minLength: FREQUENCIES - 1, maxLength: FREQUENCIES - 1 })
  .map((list) => Float64Array.from(list));

test('the grid runs from 20 Hz to 20 kHz in equal ratios', () => {
  expect(frequencies).toHaveLength(480);
  expect(frequencies[0]).toBe(20);
  expect(frequencies[479]).toBeCloseTo(20000, 8);
  for (let i = 1; i < 480; i++)
    expect(Math.log2((frequencies[i] ?? NaN) / (frequencies[i - 1] ?? NaN))).toBeCloseTo(OCTAVES_APART, 12);
});

describe('smoothing', () => {
  test('is the mean over the window, worked out cell by cell', () => {
    fc.assert(
      fc.property(cells, fc.constantFrom(FINE, SMOOTH, 1), (power, octaves) => {
        const reach = octaves / OCTAVES_APART / 2;
        smoothed(power, octaves).forEach((mean, i) => {
          let [sum, width] = [0, 0];
          power.forEach((value, k) => {
            const part = Math.max(0, Math.min(k + 1, i + reach) - Math.max(k, i - reach));
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
    expect([...smoothed(new Float64Array(479).fill(3), SMOOTH)].every((mean) => Math.abs(mean - 3) < 1e-12)).toBe(true);
    fc.assert(
      fc.property(cells, (power) => {
        const mean = smoothed(power, SMOOTH);
        expect(Math.max(...mean)).toBeLessThanOrEqual(Math.max(...power) + 1e-9);
        expect(Math.min(...mean)).toBeGreaterThanOrEqual(Math.min(...power) - 1e-9);
      }),
      { numRuns: runs(50) },
    );
  });

  /** Direct sound and one reflection `late` s after it, as strong as `share`. */
  const withReflection = (late: number, share: number) => {
    const wave = (size: number, delay: number) => {
      const sum = silence();
      frequencies.forEach((f, i) => {
        sum.re[i] = size * Math.cos(2 * Math.PI * f * delay);
        sum.im[i] = -size * Math.sin(2 * Math.PI * f * delay);
      });
      return { sum, turn: 2 * Math.PI * delay };
    };
    return [wave(1, 0.002), wave(share, 0.002 + late)];
  };

  test('over direct sound and one reflection is the closed form, however late it comes', () => {
    // ∫cos(2πfτ)df/f over the window by Gauss–Legendre, 64 places to each turn: 1 + g² + 2g·mean.
    const mean = (low: number, high: number, late: number): number => {
      const steps = 64 * Math.ceil(1 + (high - low) * late);
      let sum = 0;
      for (let i = 0; i < steps; i++) sum += Math.cos(2 * Math.PI * late * low * (high / low) ** ((i + 0.5) / steps));
      return sum / steps;
    };
    fc.assert(
      fc.property(numberFrom(1e-4, 0.05), numberFrom(0.1, 0.9), fc.constantFrom(FINE, SMOOTH), (late, g, octaves) => {
        const parts = withReflection(late, g);
        const found = smoothed(cellPowers({ left: parts, right: parts }).left, octaves);
        for (let i = 24; i < FREQUENCIES - 24; i += 13) {
          const f = frequencies[i] ?? NaN;
          const by = 2 ** (octaves / 2);
          const level = 10 * Math.log10(1 + g * g + 2 * g * mean(f / by, f * by, late));
          expect(Math.abs(10 * Math.log10(found[i] ?? NaN) - level)).toBeLessThan(0.25);
        }
      }),
      { numRuns: runs(100) },
    );
  });

  test('has the values of a published example', () => {
    // A desk 0.56 ms late and 0.8131 as strong: the window's mean by the cosine integral, base two.
    const parts = withReflection(0.5612578e-3, 0.8131276);
    const { left } = cellPowers({ left: parts, right: parts });
    const place = (f: number) => frequencies.findIndex((one) => Math.abs(one / f - 1) < 0.008);
    for (const f of [1000, 2000, 8000]) expect(place(f)).toBeGreaterThan(0);
    expect(10 * Math.log10(smoothed(left, 1)[place(2000)] ?? NaN)).toBeCloseTo(3.0257, 1);
    expect(10 * Math.log10(smoothed(left, 1)[place(8000)] ?? NaN)).toBeCloseTo(2.0627, 1);
  });
});

test('a response is the power over the reference’s, evened out, and silence has the least level', () => {
  const sum = silence();
  sum.re.fill(3);
  sum.im.fill(4);
  const cells = new Float64Array(479).fill(25);
  const { level, fine, smooth } = responseOf(sum, cells, 2, new Float64Array(480).fill(0.5));
  for (const curve of [level, fine, smooth]) expect(curve[240]).toBeCloseTo(20 * Math.log10(5), 9);
  expect(responseOf(silence(), new Float64Array(479), 1, new Float64Array(480).fill(1)).level[0]).toBe(-120);
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
