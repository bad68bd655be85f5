import { describe, expect, test } from 'vitest';
import { earEstimate } from '$lib/layout/earEstimate.ts';
import { deviationsAt, shareBelow } from '$lib/layout/normal.ts';
import { survey } from '$lib/layout/survey.ts';
import type { Person } from '$lib/project/project.ts';

const person = (more: Partial<Person>): Person => ({
  sex: 'man',
  stature: null,
  percentile: 50,
  seat: null,
  slump: 40,
  shoes: null,
  ...more,
});

describe('ANSUR II (2012), Natick/TR-15/007, computed from its two public files', () => {
  // With shoes of 25 and 45 mm and 40 mm of slump (City University of Hong Kong, online anthropometry, read).
  test.each([
    ['man', 5, 1121],
    ['man', 50, 1201],
    ['man', 95, 1286],
    ['woman', 5, 1047],
    ['woman', 50, 1123],
    ['woman', 95, 1203],
  ] as const)('a %s at P%d has the ears %d mm over the floor', (sex, percentile, height) => {
    const { earHeight, low, high } = earEstimate(person({ sex, percentile }));
    expect(earHeight).toBeCloseTo(height, 9);
    expect([low, high].map(Math.round)).toEqual(sex === 'man' ? [1121, 1286] : [1047, 1203]);
  });

  test.each([
    ['man', 5, 1136],
    ['man', 50, 1216],
    ['man', 95, 1301],
    ['woman', 5, 1042],
    ['woman', 50, 1118],
    ['woman', 95, 1198],
  ] as const)('barefoot and upright, a %s at P%d has them at %d mm', (sex, percentile, height) => {
    const { earHeight } = earEstimate(person({ sex, percentile, slump: 0, shoes: 0 }));
    expect(earHeight).toBeCloseTo(height, 9);
  });

  test('percentiles do not add: the men’s P5 is 1136, not 731 + 390 = 1121', () => {
    const { overSeat, popliteal } = survey.man;
    expect(overSeat.p5 + popliteal.p5).toBe(1121);
    expect(earEstimate(person({ percentile: 5, slump: 0, shoes: 0 })).earHeight).toBeCloseTo(1136, 9);
  });

  test('from stature, on a seat that was measured: 0.38785·s + 105.99 and 0.37124·s + 125.60', () => {
    const over = (sex: 'man' | 'woman', stature: number) =>
      earEstimate(person({ sex, stature, seat: 450, slump: 0 })).earHeight - 450;
    expect(over('man', 1755)).toBeCloseTo(786.67, 2);
    expect(over('woman', 1626)).toBeCloseTo(729.24, 2);
  });

  test('the line through stature meets the medians: within 2 mm, on the seat and on the floor', () => {
    for (const sex of ['man', 'woman'] as const) {
      const { stature, overSeat, overFloor } = survey[sex];
      const upright = { sex, stature: stature.p50, slump: 0, shoes: 0 };
      expect(Math.abs(earEstimate(person({ ...upright, seat: 0 })).earHeight - overSeat.p50)).toBeLessThan(2);
      expect(Math.abs(earEstimate(person(upright)).earHeight - overFloor.p50)).toBeLessThan(2);
    }
  });

  test('ITU’s 1.2 m is the men’s median; the women’s is 77 mm lower (ITU-R BS.775-3, read)', () => {
    const [man, woman] = [earEstimate(person({})), earEstimate(person({ sex: 'woman' }))];
    expect(Math.abs(man.earHeight - 1200)).toBeLessThan(2);
    expect(Math.abs(1200 - woman.earHeight - 77)).toBeLessThan(1);
  });
});

// Of any table of the normal distribution.
test.each([
  [0, 0.5],
  [1, 0.8413447461],
  [1.644853627, 0.95],
  [1.9599639845, 0.975],
  [-2.326347874, 0.01],
  [3, 0.998650102],
])('a share of the normal distribution lies below %d deviations: %d', (z, share) => {
  expect(shareBelow(z)).toBeCloseTo(share, 10);
  expect(Math.abs(deviationsAt(share) - z)).toBeLessThan(1e-7);
});
