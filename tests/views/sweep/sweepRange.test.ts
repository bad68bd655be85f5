import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldTable } from '$lib/project/fields/table.ts';
import type { NumberField } from '$lib/project/fields/field.ts';
import { MM_PER_INCH } from '$lib/project/units.ts';
import { sweep } from '$lib/study/sweep.ts';
import { measures } from '$lib/study/measures.ts';
import { rangeRound, rangeTexts, readRange } from '$lib/views/sweep/sweepRange.ts';
import { firstLayout, project } from '../../projects.ts';
import { runs } from '../../runs.ts';

function field(pattern: string): NumberField {
  const found = fieldTable[`/layouts/*${pattern}`];
  if (found?.kind !== 'number') throw new Error(`no number at ${pattern}`);
  return found;
}

const numbers = Object.entries(fieldTable).flatMap(([pattern, of]) =>
  pattern.startsWith('/layouts/*/') && of.kind === 'number' ? [of] : [],
);

describe('a range to begin with', () => {
  test('holds the value itself as one of its places, lies within the field, and reads back as it was written', () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.constantFrom(...numbers), fc.double({ min: 0, max: 1, noNaN: true }), (of, part) => {
        const raw = of.min + part * (of.max - of.min);
        const value = Math.min(of.max, Math.max(of.min, Number(raw.toFixed(of.whole ? 0 : 3))));
        checked += 1;
        const { from, to, steps } = rangeRound(of, value, 'mm');
        expect(from).toBeGreaterThanOrEqual(of.min);
        expect(to).toBeLessThanOrEqual(of.max);
        expect(steps).toBeGreaterThanOrEqual(2);
        expect(steps).toBeLessThanOrEqual(161);
        const step = (to - from) / (steps - 1);
        if (of.whole) expect(Number.isInteger(step)).toBe(true);
        // A whole field may be smaller than one step: it is looked at from end to end then.
        if (from !== of.min || to !== of.max || steps > 2) {
          const index = (value - from) / step;
          expect(Math.abs(index - Math.round(index))).toBeLessThan(1e-3);
        }
        expect(readRange(rangeTexts({ from, to, steps }, of, 'mm'), of, 'mm')).toEqual({
          ok: true,
          range: { from, to, steps },
        });
      }),
      { numRuns: runs(300) },
    );
    expect(checked).toBe(runs(300));
  });

  test('goes in steps of a tape, and is one that the sweep takes', () => {
    expect(rangeRound(field('/listener/setback'), 180, 'mm')).toEqual({ from: 80, to: 280, steps: 41 });
    expect(rangeRound(field('/stand/lift'), 12, 'mm')).toEqual({ from: 2, to: 112, steps: 23 });
    expect(rangeRound(field('/desk/absorption'), 0, 'mm')).toMatchObject({ from: 0, to: 1 });
    const { from, to, steps } = rangeRound(field('/listener/setback'), 7 * MM_PER_INCH, 'in');
    const eighths = ((to - from) / (steps - 1) / MM_PER_INCH) * 8;
    expect(eighths).toBeCloseTo(1, 6);
    const demo = project();
    const of = measures.filter(({ name }) => name === 'tilt');
    expect(sweep(demo, firstLayout(demo), { over: '/listener/setback', from, to, steps, of, mirror: false }).ok).toBe(true); // prettier-ignore
  });
});

describe('a typed range', () => {
  const setback = field('/listener/setback');
  const texts = { from: '80', to: '280', steps: '41' };
  const wrong = (change: Partial<typeof texts>, of = setback, unit: 'mm' | 'in' = 'mm') => {
    const read = readRange({ ...texts, ...change }, of, unit);
    return read.ok ? null : read.messages;
  };

  test('that cannot be is told at the field that is wrong', () => {
    expect(wrong({})).toBeNull();
    expect(wrong({ from: 'near' })).toEqual({ from: 'Enter −3000 to 6000 mm' });
    expect(wrong({ to: '1e9' })).toEqual({ to: 'Enter −3000 to 6000 mm' });
    expect(wrong({ from: '300' })).toEqual({ to: 'Enter more than 300, where the range begins' });
    expect(wrong({ to: '80' })).toEqual({ to: 'Enter more than 80, where the range begins' });
    for (const steps of ['0', '1', '-4', '2.5', '1001', '', 'many']) {
      expect(wrong({ steps })).toEqual({ steps: 'Enter 2 to 1000, a whole number' });
    }
    expect(wrong({ from: '', steps: '0' })).toEqual({
      from: 'Enter −3000 to 6000 mm',
      steps: 'Enter 2 to 1000, a whole number',
    });
  });

  test('of whole numbers leaves them whole', () => {
    const count = field('/stand/cheeks/count');
    const change = { from: '1', to: '5', steps: '4' };
    expect(wrong(change, count)).toEqual({ steps: 'Enter a number that leaves every value whole, such as 5' });
    expect(wrong({ ...change, steps: '5' }, count)).toBeNull();
  });

  test('in inches is what a tape in inches says', () => {
    const read = readRange({ from: '3 1/2', to: '10', steps: '14' }, setback, 'in');
    expect(read).toEqual({ ok: true, range: { from: 88.9, to: 254, steps: 14 } });
  });
});
