import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitStanding } from '$lib/proof/fitStanding.ts';
import { chiSquaredLimit, sortOut } from '$lib/proof/odd.ts';
import type { Taken } from '$lib/proof/taken.ts';
import { gaussian } from './gaussian.ts';
import { blank, off, planned, taken } from './stands.ts';

const it = planned('right');
const real = off(it.plan, [4, -3, 2, 1, -1, 0.3]);
const fit = (some: readonly Taken[]) => fitStanding(some, it.cabinet, it.plan, it.around);
const many = [
  blank.front,
  blank.rear,
  blank.slope,
  blank.toe,
  blank.mark,
  blank.corner,
  blank.inner,
  blank.inboard,
  blank.top,
];

describe('readings that contradict', () => {
  test('the limit is the one of the tables', () => {
    // Upper hundredth of χ², NIST/SEMATECH handbook of statistical methods 1.3.6.7.4: 6.635, 9.210, 15.086, 23.209.
    for (const [spare, table] of [
      [1, 6.635],
      [2, 9.21],
      [5, 15.086],
      [10, 23.209],
    ] as const) {
      expect(Math.abs(chiSquaredLimit(spare) / table - 1)).toBeLessThan(0.01);
    }
  });

  test('a protractor read ten degrees off is named and left out, whichever else was read', () => {
    fc.assert(
      fc.property(fc.integer(), fc.constantFrom(3, 2, 6, 7), (seed, place) => {
        const readings = taken(many, real, it, gaussian(seed)).map((one, i) => (i === place ? wrong(one) : one));
        const sorted = sortOut(readings, fit);
        expect(sorted?.odd).toContain(place);
      }),
    );
  });

  test('readings without a mistake are seldom called contradictory: about one set in a hundred', () => {
    const normal = gaussian(7);
    const count = 200;
    let called = 0;
    for (let run = 0; run < count; run += 1) {
      const sorted = sortOut(taken(many, real, it, normal), fit);
      if (!sorted || sorted.odd.length + sorted.unclear.length > 0) called += 1;
    }
    // Binomial with 1 in 100: more than 10 of 200 has a chance of one in ten thousand.
    expect(called).toBeLessThanOrEqual(10);
  });

  test('two that contradict each other and nothing else are both named, and neither is left out', () => {
    const readings = taken([blank.front, blank.rear, blank.toe, blank.toe, blank.mark], real, it);
    const sorted = sortOut(
      readings.map((one, i) => (i === 3 && one.what === 'toe' ? { ...one, value: one.value + 10 } : one)),
      fit,
    );
    expect(sorted?.odd).toEqual([]);
    expect(sorted?.unclear).toEqual([2, 3]);
  });
});

const wrong = (reading: Taken): Taken =>
  'value' in reading ? { ...reading, value: reading.value + 10 } : { ...reading, x: reading.x + 60 };
