import { describe, expect, test } from 'vitest';
import type { Measure } from '$lib/study/measure.ts';
import { measures } from '$lib/study/measures.ts';
import { sweep } from '$lib/study/sweep.ts';
import type { SweepRow } from '$lib/study/sweepRow.ts';
import { changeOf, curveOf, heldOver, isTelling, nearestRow, spanOf, tellingOf } from '$lib/views/sweep/sweepCurve.ts';
import { firstLayout, project } from '../../projects.ts';

function measure(name: string): Measure {
  const found = measures.find((one) => one.name === name);
  if (!found) throw new Error(`no measure ${name}`);
  return found;
}
const tilt = measure('tilt');
const none = [{ pointer: '', message: 'no' }];
/** Rows at 0, 1, 2 …; null for one without an answer. */
const rowsOf = (values: readonly (number | null)[], name = 'tilt'): SweepRow[] =>
  values.map((value, at) => ({
    at,
    ok: value !== null,
    values: { [name]: value },
    reason: value === null ? none : null,
  }));

describe('a curve', () => {
  test('is broken where there is no answer, and a single place is a run of its own', () => {
    const { runs, extent } = curveOf(rowsOf([1, 2, null, null, 5, null, 7, 8]), tilt, []);
    expect(runs.map((run) => run.map(({ at }) => at))).toEqual([[0, 1], [4], [6, 7]]);
    expect(extent).toEqual([1, 8]);
    expect(curveOf(rowsOf([null, null]), tilt, [])).toMatchObject({ runs: [], extent: null });
  });

  test('passes through its bends, which lie beyond the rows', () => {
    const bend = { measure: 'tilt', at: 1.5, what: 'bend', before: -0.5, after: -0.5 } as const;
    const other = { ...bend, measure: 'miss', at: 0.5 };
    const { runs, bends, extent } = curveOf(rowsOf([2, 0, 0, 2]), tilt, [bend, other]);
    expect(runs).toEqual([
      [
        { at: 0, value: 2 },
        { at: 1, value: 0 },
        { at: 1.5, value: -0.5 },
        { at: 2, value: 0 },
        { at: 3, value: 2 },
      ],
    ]);
    expect(bends).toEqual([{ at: 1.5, value: -0.5 }]);
    expect(extent).toEqual([-0.5, 2]);
  });

  test('ends before a jump and begins again after it, and no slope is drawn between', () => {
    const jump = { measure: 'tilt', at: 1.25, what: 'jump', before: 1.5, after: 8 } as const;
    const { runs, jumps } = curveOf(rowsOf([1, 1, 9, 9]), tilt, [jump]);
    expect(runs.map((run) => run.at(-1))).toEqual([
      { at: 1.25, value: 1.5 },
      { at: 3, value: 9 },
    ]);
    expect(runs[1]?.[0]).toEqual({ at: 1.25, value: 8 });
    expect(jumps).toEqual([{ at: 1.25, before: 1.5, after: 8 }]);
  });

  test('tells what has a plan but no value from what has no plan', () => {
    const rows = rowsOf([1, null, null, 4, null]).map((row, i) => (i === 4 ? row : { ...row, ok: true }));
    expect(curveOf(rows, tilt, []).missing).toEqual([{ from: 1, to: 2 }]);
  });

  test('of a sweep is drawn through every row and bend that there is, gaps left out', () => {
    const demo = project();
    const swept = sweep(demo, firstLayout(demo), { over: '/stand/lift', from: 0, to: 405, steps: 42, of: [tilt], mirror: false }); // prettier-ignore
    if (!swept.ok) throw new Error('the range is a sound one');
    const { rows, kinks, gaps } = swept.value;
    expect([gaps.length, kinks.length]).toEqual([1, 1]);
    const { runs, bends } = curveOf(rows, tilt, kinks);
    expect(runs).toHaveLength(1);
    expect(runs[0]).toHaveLength(rows.filter(({ ok }) => ok).length + 1);
    // The steepest tilt is a size: it bends where it is nothing.
    expect(bends[0]?.value).toBeCloseTo(0, 1);
  });
});

test('what is not worked out yet is held over from before, over the same places only', () => {
  const demo = project();
  const swept = (of: readonly string[], to = 40) => {
    const by = measures.filter(({ name }) => of.includes(name));
    const result = sweep(demo, firstLayout(demo), { over: '/stand/lift', from: 0, to, steps: 5, of: by, mirror: false }); // prettier-ignore
    if (!result.ok) throw new Error('the range is a sound one');
    return result.value;
  };
  const [older, newer] = [swept(['tilt', 'miss']), swept(['tilt'])];
  const { rows } = heldOver(older, newer);
  expect(rows.map(({ values }) => values.miss)).toEqual(older.rows.map(({ ok, values }) => (ok ? values.miss : undefined))); // prettier-ignore
  expect(rows.map(({ values }) => values.tilt)).toEqual(newer.rows.map(({ values }) => values.tilt));
  expect(heldOver(swept(['miss'], 80), newer)).toBe(newer);
});

describe('what changes', () => {
  test('is counted in what is worth looking at, and is not known before it is worked out', () => {
    expect(changeOf(rowsOf([3, 5, null, 4]), tilt)).toBe(2);
    expect(changeOf(rowsOf([3, 3.0001]), tilt)).toBeCloseTo(0.0001, 9);
    expect(isTelling(rowsOf([3, 3.0001]), tilt)).toBe(false);
    expect(changeOf(rowsOf([1, 2], 'miss'), tilt)).toBeNull();
    expect(isTelling(rowsOf([1, 2], 'miss'), tilt)).toBe(false);
  });

  test('is drawn first: what changes most, in the given order, and never the move itself', () => {
    const demo = project();
    const of = measures.filter(({ needs }) => needs === 'aim' || needs === 'stands');
    const swept = sweep(demo, firstLayout(demo), { over: '/listener/setback', from: 80, to: 280, steps: 11, of, mirror: false }); // prettier-ignore
    if (!swept.ok) throw new Error('the range is a sound one');
    const { rows } = swept.value;
    const told = tellingOf(rows, of, 4).map(({ name }) => name);
    expect(told).toEqual(of.map(({ name }) => name).filter((name) => told.includes(name)));
    expect(told).toContain('triangle-error');
    expect(told).not.toContain('move');
    // The axis is aimed at the head wherever that is.
    expect(told).not.toContain('miss');
    const least = Math.min(...tellingOf(rows, of, 4).map((one) => changeOf(rows, one) ?? 0));
    const left = of.filter(({ name }) => !told.includes(name) && name !== 'move');
    expect(Math.max(...left.map((one) => changeOf(rows, one) ?? 0))).toBeLessThanOrEqual(least);
  });
});

test('what is the input itself is not drawn first', () => {
  const of = measures.filter(({ name }) => name === 'lift' || name === 'tilt');
  const demo = project();
  const swept = sweep(demo, firstLayout(demo), { over: '/stand/lift', from: 10, to: 90, steps: 5, of, mirror: false });
  expect(swept.ok && tellingOf(swept.value.rows, of, 4).map(({ name }) => name)).toEqual(['tilt']);
});

describe('an axis', () => {
  test('makes no mountains of rounding, and shows a limit that is near', () => {
    const [low, high] = spanOf([3, 3.00001], tilt);
    expect(high - low).toBeGreaterThanOrEqual(1);
    const tip = measure('tip-angle');
    const limit = tip.limit?.value ?? NaN;
    expect(spanOf([limit + 1, limit + 5], tip)[0]).toBe(limit);
    expect(spanOf([limit + 20, limit + 24], tip)[0]).toBe(limit + 20);
  });
});

test('the nearest row is found from anywhere', () => {
  const rows = rowsOf([0, 0, 0]);
  expect([-5, 0.4, 0.6, 99].map((at) => nearestRow(rows, at))).toEqual([0, 0, 1, 2]);
});
