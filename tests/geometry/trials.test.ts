import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countWithin, quantile, shareInterval, trials } from '$lib/geometry/trials.ts';
import { runs } from '../runs.ts';

const all = <Value>(steps: Generator<number, Value>): { shares: number[]; value: Value } => {
  const shares: number[] = [];
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return { shares, value: step.value };
    shares.push(step.value);
  }
};

const sum = (off: Float64Array): number => Math.abs(off.reduce((total, one) => total + one, 0));

describe('trials', () => {
  // JCGM 101:2008, 9.2.3 and 9.2.4: sums of four rectangles, with the ends of their 95 % intervals. 3.879407 is computed from the exact density.
  test.each([
    ['four of standard deviation 1', [1, 1, 1, 1], 3.879407, 0.06],
    ['three of 1 and one of 10', [1, 1, 1, 10], 17.015814, 0.12],
  ])('of %s meet the interval of JCGM 101, where the normal rule does not', (_, deviations, end, within) => {
    const spans = deviations.map((deviation) => deviation * Math.sqrt(3));
    const { value } = all(trials(spans, sum, { seed: 7, count: 40_000 }));
    expect(Math.abs(quantile(value, 0.95) - end)).toBeLessThan(within);
  });

  test('are the same for the same seed, others for another, in order, and tell how far they are', () => {
    const of = (seed: number) => all(trials([1, 2], sum, { seed, count: 2000 }));
    expect(of(1)).toEqual(of(1));
    expect(of(1).value).not.toEqual(of(2).value);
    expect(of(1).shares).toEqual([0.25, 0.5, 0.75]);
    expect([...of(1).value]).toEqual([...of(1).value].sort((a, b) => a - b));
  });

  test('stay within the sum of their spans', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 50, noNaN: true }), { minLength: 1, maxLength: 8 }), (spans) => {
        const { value } = all(trials(spans, sum, { seed: 3, count: 50 }));
        expect(quantile(value, 1)).toBeLessThanOrEqual(spans.reduce((total, one) => total + one, 0) * (1 + 1e-12));
      }),
      { numRuns: runs(200) },
    );
  });

  test('that have no outcome are counted as within nothing', () => {
    const { value } = all(trials([1], ([off = 0]) => (off > 0 ? NaN : 1), { seed: 5, count: 1000 }));
    const hits = countWithin(value, Infinity);
    expect(hits).toBeGreaterThan(400);
    expect(hits).toBeLessThan(600);
    expect(countWithin(value, 0.5)).toBe(0);
  });
});

test('a count within a limit is what counting one by one finds', () => {
  const value = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 60 }), value, (list, limit) => {
      const sorted = Float64Array.from(list).sort();
      expect(countWithin(sorted, limit)).toBe(list.filter((one) => one <= limit).length);
    }),
    { numRuns: runs(300) },
  );
});

// Wilson's interval, worked out from its formula by hand for these counts.
test.each([
  [0, 10, 0, 0.277533],
  [5, 10, 0.236593, 0.763407],
  [3, 15, 0.070475, 0.451854],
  [95, 100, 0.88825, 0.978456],
  [950, 1000, 0.934686, 0.96187],
  [0, 1000, 0, 0.003827],
])('%i of %i is a share between %f and %f', (hits, of, low, high) => {
  const interval = shareInterval(hits, of);
  expect(interval.low).toBeCloseTo(low, 6);
  expect(interval.high).toBeCloseTo(high, 6);
});
