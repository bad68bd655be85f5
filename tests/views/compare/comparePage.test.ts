import { describe, expect, test } from 'vitest';
import { MILLIMETRES } from '$lib/project/units.ts';
import type { Project } from '$lib/project/project.ts';
import { plan } from '$lib/solution/plan.ts';
import { compare, type ComparedLayout, type Comparison } from '$lib/study/compare.ts';
import type { MeasureText } from '$lib/study/measure.ts';
import { comparedBy } from '$lib/study/measures.ts';
import { failText, fitRows } from '$lib/views/compare/fitRows.ts';
import { inputRows } from '$lib/views/compare/inputRows.ts';
import { measureRows } from '$lib/views/compare/measureRows.ts';
import { standRows } from '$lib/views/compare/standRows.ts';
import { tagsOf } from '$lib/views/compare/strip.ts';
import { summaryOf } from '$lib/views/compare/summary.ts';
import { withMeasuresOf } from '$lib/views/compare/whole.ts';
import { withLayouts } from '../../study/layouts.ts';
import { withGap } from '../../rooms.ts';

const quick = comparedBy.filter(({ needs }) => ['aim', 'bodies', 'stands'].includes(needs));

const layoutsOf = (...changes: readonly Readonly<Record<string, unknown>>[]): Project => {
  const of = withLayouts(...changes);
  if (!of) throw new Error('the layouts are sound');
  return of;
};
const together = { '/layouts/0/placement/left/x': -277, '/layouts/0/placement/right/x': 277 };
const back = { '/layouts/0/listener/setback': 450 };
const three = layoutsOf({}, together, back);
const compared = compare(three, three.layouts, quick);

const miss: MeasureText = { name: 'm', label: 'M', unit: 'mm', better: 'less', says: '', working: '' };
/** Layouts of no project with values by one measure. */
const valued = (values: readonly (number | null | undefined)[], best: string[], worst: string[]): Comparison => ({
  layouts: values.map((value, index): ComparedLayout => ({
    name: `${index}`,
    ok: true,
    values: value === undefined ? {} : { m: value },
    findings: null,
    reason: null,
  })),
  differs: [],
  best: best.length > 0 ? { m: best } : {},
  worst: worst.length > 0 ? { m: worst } : {},
  stands: [],
});

describe('the rows of measures', () => {
  test('hold what the comparison holds, rounded, the best and the worst marked', () => {
    const row = measureRows(quick, compared, MILLIMETRES).find(({ measure }) => measure.name === 'triangle-error');
    expect(row?.cells.map(({ text, unit, mark }) => [text, unit, mark])).toEqual([
      ['23.7', '°', 'worst'],
      ['0.0', '°', 'best'],
      ['0.3', '°', null],
    ]);
    expect(row?.cells.map(({ value }) => value)).toEqual(
      compared.layouts.map(({ values }) => values['triangle-error']),
    );
  });

  test('have as many digits as it takes to tell the best from the worst, and no more', () => {
    const texts = (...values: number[]) =>
      measureRows([miss], valued(values, ['0'], ['1']), MILLIMETRES)[0]?.cells.map(({ text }) => text);
    expect(texts(22, 24)).toEqual(['22', '24']);
    expect(texts(22.19, 22.4)).toEqual(['22.2', '22.4']);
    expect(texts(22.41, 22.44)).toEqual(['22.41', '22.44']);
  });

  test('say what is still to come, what is not known, and what nothing can be better than', () => {
    const cell = (measure: MeasureText, value: number | null | undefined) =>
      measureRows([measure], valued([value], [], []), MILLIMETRES)[0]?.cells[0]?.text;
    expect(cell(miss, undefined)).toBeNull();
    expect(cell({ ...miss, missing: { means: '', is: 'unknown' } }, null)).toBe('not known');
    expect(cell({ ...miss, missing: { means: '', is: 'best' } }, null)).toBe('none');
  });

  test('are in inches where lengths are', () => {
    const [row] = measureRows([miss], valued([25.4, 50.8], ['0'], ['1']), { length: 'in', fraction: null });
    expect(row?.cells.map(({ text, unit }) => [text, unit])).toEqual([['1.00', 'in'], ['2.00', 'in']]); // prettier-ignore
  });
});

describe('what differs in the input', () => {
  test('is told in the words of the form, of a mirrored pair once', () => {
    const rows = inputRows(compared.differs, MILLIMETRES);
    expect(rows.map(({ label }) => label)).toEqual(['Listener, setback', 'Each mark, sideways']);
    expect(rows[1]?.cells.map(({ text, changed }) => [text, changed])).toEqual([
      ['430\u202fmm', false],
      ['277\u202fmm', true],
      ['430\u202fmm', false],
    ]);
  });

  test('of one loudspeaker alone is told of that', () => {
    const of = layoutsOf({}, { '/layouts/0/placement/right/x': 400 });
    const { differs } = compare(of, of.layouts, []);
    expect(inputRows(differs, MILLIMETRES).map(({ label }) => label)).toEqual(['Placement, right, sideways']);
  });

  test('names the choice, not its key', () => {
    const of = layoutsOf({}, { '/layouts/0/aim/toe': { rule: 'straight' }, ...withGap(null) });
    const { differs } = compare(of, of.layouts, []);
    const texts = inputRows(differs, MILLIMETRES).map(({ cells }) => cells.map(({ text }) => text));
    expect(texts).toEqual([
      ['820\u202fmm', 'no wall'],
      ['to the head', 'straight ahead'],
    ]);
  });
});

describe('the line from worse to better', () => {
  const tags = (values: readonly number[], better: 'less' | 'more', width = 284) => {
    const [worst, best] = better === 'less' ? [Math.max(...values), Math.min(...values)] : [Math.min(...values), Math.max(...values)]; // prettier-ignore
    const names = (end: number) => values.flatMap((value, index) => (value === end ? [`${index}`] : []));
    const [row] = measureRows([{ ...miss, better }], valued(values, names(best), names(worst)), MILLIMETRES);
    if (!row) throw new Error('one row');
    return tagsOf(row, ['A', 'B', 'C', 'D', 'E'], width);
  };

  test('has the worst at its left end, the best at its right, the others in proportion', () => {
    expect(tags([10, 20, 15], 'more')).toEqual([
      { x: 9.5, width: 19, letters: 'A' },
      { x: 142, width: 19, letters: 'C' },
      { x: 274.5, width: 19, letters: 'B' },
    ]);
    expect(tags([10, 20, 15], 'less').map(({ letters }) => letters)).toEqual(['B', 'C', 'A']);
  });

  test('takes together what would lie over each other, and stays within its width', () => {
    const all = tags([1, 1.01, 5, 5, 9], 'less');
    expect(all.map(({ letters }) => letters)).toEqual(['E', 'CD', 'BA']);
    for (const { x, width } of all) expect(x - width / 2 >= 0 && x + width / 2 <= 284).toBe(true);
    all.slice(1).forEach((tag, index) => {
      const before = all[index];
      expect(tag.x - (before?.x ?? 0)).toBeGreaterThanOrEqual((tag.width + (before?.width ?? 0)) / 2);
    });
  });
});

test('the stands of each layout in each other: what the comparison says, by its letter', () => {
  const names = compared.layouts.map(({ name }) => name);
  const rows = fitRows(compared.stands, names, MILLIMETRES);
  rows.forEach((row, from) =>
    row.forEach(({ kind, miss: told }, to) => {
      const fit = compared.stands.find((one) => one.from === names[from] && one.to === names[to]);
      expect(kind).toBe(from === to ? 'own' : fit?.fits ? 'fits' : 'fails');
      if (fit) expect(told).toBe(`${fit.miss.toFixed(0)}\u202fmm`);
    }),
  );
  const [fit] = compared.stands;
  if (!fit) throw new Error('three layouts have six pairs');
  expect(failText({ ...fit, tilt: -4.4361, toe: 0, lift: 0, used: 1.2, by: 'treble' }, MILLIMETRES)).toBe(
    '4.4° too flat: too much treble is lost off the axis',
  );
  expect(failText({ ...fit, tilt: 2, toe: -1, lift: 6, used: 0.5 }, MILLIMETRES)).toBe(
    '2.0° too steep, 1.0° turned in too little, 6.0\u202fmm too high: a cabinet would stand where something else is',
  );
});

test('the stand that each layout needs, both sides where they differ', () => {
  const askew = layoutsOf({}, { '/layouts/0/placement/right/x': 500 });
  const plans = [...askew.layouts.map((layout) => plan(askew, layout, false)), null].map((made) =>
    made?.ok ? made.value : null,
  );
  const slope = standRows(plans, MILLIMETRES).find(({ label }) => label === 'Slope');
  expect(slope?.cells[0]).toMatch(/^\d+\.\d°$/);
  expect(slope?.cells[1]).toMatch(/^\d+\.\d°, \d+\.\d°$/);
  expect(slope?.cells[2]).toBeNull();
});

test('what the checks come to is told by the worst', () => {
  const of = (...levels: ('fault' | 'caution' | 'note')[]) => summaryOf(true, levels.map((level) => ({ level }))); // prettier-ignore
  expect(of('caution', 'fault')).toEqual({ level: 'fault', text: '1 fault' });
  expect(of('caution', 'note', 'caution')).toEqual({ level: 'caution', text: '2 cautions' });
  expect(of('note')).toEqual({ level: 'good', text: 'no caution' });
  expect(summaryOf(true, null)).toEqual({ level: 'waiting', text: 'being checked' });
  expect(summaryOf(false, null)).toEqual({ level: 'fault', text: 'no answer' });
});

test('two comparisons by other measures of the same layouts are as one by all of them', () => {
  const [some, others] = [quick.slice(0, 4), quick.slice(4)];
  const both = withMeasuresOf(compare(three, three.layouts, some), compare(three, three.layouts, others));
  expect(both).toEqual(compared);
});
