import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { earEstimate, type EarEstimate } from '$lib/layout/earEstimate.ts';
import { deviationsAt, shareBelow } from '$lib/layout/normal.ts';
import type { Person } from '$lib/project/project.ts';
import { numberFrom } from '../numbers.ts';

const person = (more: Partial<Person> = {}): Person => ({
  sex: 'man',
  stature: null,
  percentile: 50,
  seat: null,
  slump: 40,
  shoes: null,
  ...more,
});
const estimate = (more: Partial<Person> = {}): EarEstimate => earEstimate(person(more));

const anyPerson: fc.Arbitrary<Person> = fc.record({
  sex: fc.constantFrom('man', 'woman', 'not-said'),
  stature: fc.option(numberFrom(1000, 2300), { nil: null }),
  percentile: numberFrom(1, 99),
  seat: fc.option(numberFrom(100, 1200), { nil: null }),
  slump: numberFrom(0, 200),
  shoes: fc.option(numberFrom(0, 150), { nil: null }),
});

describe('an estimated ear height', () => {
  test('lies in its spread and grows with percentile, stature and seat', () => {
    fc.assert(
      fc.property(anyPerson, (one) => {
        const found = earEstimate(one);
        expect(found.low).toBeLessThan(found.high);
        expect(found.deviation).toBeGreaterThan(0);
        if (one.stature !== null || (one.percentile >= 5 && one.percentile <= 95)) {
          expect(found.earHeight).toBeGreaterThanOrEqual(found.low - 1e-9);
          expect(found.earHeight).toBeLessThanOrEqual(found.high + 1e-9);
        }
        if (one.stature === null) {
          const higher = earEstimate({ ...one, percentile: Math.min(99.5, one.percentile + 0.5) });
          expect(higher.earHeight).toBeGreaterThan(found.earHeight);
        }
        const lower = earEstimate({ ...one, slump: one.slump + 10 });
        expect(found.earHeight - lower.earHeight).toBeCloseTo(10, 6);
        if (one.seat !== null) {
          const raised = earEstimate({ ...one, seat: one.seat + 25 });
          expect(raised.earHeight - found.earHeight).toBeCloseTo(25, 6);
        }
      }),
    );
  });

  test('is the sum of its terms for one sex', () => {
    for (const one of [person(), person({ stature: 1830 }), person({ sex: 'woman', stature: 1600, seat: 455 })]) {
      const { earHeight, groups } = earEstimate(one);
      expect(groups).toHaveLength(1);
      const sum = groups[0]?.terms.reduce((total, { value }) => total + value, 0);
      expect(earHeight).toBeCloseTo(sum ?? NaN, 9);
    }
    expect(estimate({ stature: 1830, seat: 455 }).groups[0]?.terms.map(({ what }) => what)).toEqual([
      'ear over the seat',
      'seat',
      'slump',
    ]);
  });

  test('knowing more narrows the spread: stature, and a measured seat', () => {
    for (const sex of ['man', 'woman'] as const) {
      const all = estimate({ sex }).deviation;
      const stature = estimate({ sex, stature: 1700 }).deviation;
      const both = estimate({ sex, stature: 1700, seat: 450 }).deviation;
      expect(stature).toBeLessThan(0.6 * all);
      expect(both).toBeLessThan(stature);
    }
  });

  test('without the sex is between the two, wider, and goes by the stature', () => {
    const [man, woman, either] = [estimate(), estimate({ sex: 'woman' }), estimate({ sex: 'not-said' })];
    expect(either.earHeight).toBeGreaterThan(woman.earHeight);
    expect(either.earHeight).toBeLessThan(man.earHeight);
    expect(either.deviation).toBeGreaterThan(man.deviation);
    const tall = estimate({ sex: 'not-said', stature: 1950 });
    expect(tall.groups.find(({ sex }) => sex === 'man')?.share).toBeGreaterThan(0.99);
    expect(tall.earHeight).toBeCloseTo(estimate({ stature: 1950 }).earHeight, 0);
  });

  test('without the sex leaves the shares below low and high that it says, counted in drawn people', () => {
    const { low, high, groups } = estimate({ sex: 'not-said' });
    const heights = groups.flatMap(({ heights: { p5, p50, p95 } }) =>
      Array.from({ length: 20_000 }, (_, i) => {
        const z = deviationsAt((i + 0.5) / 20_000);
        return p50 + (z * (z < 0 ? p50 - p5 : p95 - p50)) / deviationsAt(0.95);
      }),
    );
    expect(heights.filter((height) => height < low).length / heights.length).toBeCloseTo(0.05, 3);
    expect(heights.filter((height) => height > high).length / heights.length).toBeCloseTo(0.05, 3);
  });

  test('says where it comes from, and what it assumes when it does', () => {
    expect(estimate().sources).toHaveLength(2);
    expect(estimate().sources[0]).toContain('ANSUR II');
    expect(estimate({ stature: 1800, seat: 440 }).sources).toHaveLength(2);
    expect(estimate({ stature: 1800 }).sources[2]).toBe('Legs in proportion to stature: rule of thumb');
  });

  test('takes shoes as given, and none on a measured seat', () => {
    expect(estimate({ shoes: 0 }).earHeight).toBeCloseTo(estimate().earHeight - 25, 9);
    expect(estimate({ seat: 450, shoes: 90 })).toEqual(estimate({ seat: 450, shoes: 0 }));
  });
});

describe('the normal distribution', () => {
  test('is even about its middle, grows, and is undone', () => {
    fc.assert(
      fc.property(numberFrom(-5, 5), numberFrom(0.001, 1), (z, more) => {
        expect(shareBelow(z) + shareBelow(-z)).toBeCloseTo(1, 14);
        expect(shareBelow(z + more)).toBeGreaterThan(shareBelow(z));
        // Where the curve is flat, a share's last digit is many of the deviation's.
        expect(Math.abs(deviationsAt(shareBelow(z)) - z)).toBeLessThan(1e-9);
      }),
    );
  });

  test('ends where doubles do', () => {
    expect(shareBelow(40)).toBe(1);
    expect(shareBelow(-40)).toBe(0);
    expect(() => deviationsAt(1.5)).toThrow('expected a share between 0 and 1, got 1.5');
  });
});
