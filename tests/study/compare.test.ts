import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames, type Layout, type Project } from '$lib/project/project.ts';
import { plan } from '$lib/solution/plan.ts';
import { solve } from '$lib/solution/solve.ts';
import { compare, compareSteps, type Comparison } from '$lib/study/compare.ts';
import { differencesOf } from '$lib/study/differences.ts';
import { measureOf, type Measure } from '$lib/study/measure.ts';
import { comparedBy, measures } from '$lib/study/measures.ts';
import { ranked } from '$lib/study/ranked.ts';
import { standFit } from '$lib/study/standsCut.ts';
import { runs } from '../runs.ts';
import { severalLayouts, withLayouts } from './layouts.ts';

const quick = measures.filter(({ needs }) => needs === 'aim' || needs === 'stands');

const sound = (of: Project | null): Project => {
  if (!of) throw new Error('the layouts are sound');
  return of;
};

describe('compare', () => {
  test('has the measures of each layout as its own solution gives them, and the best and worst of each', () => {
    let answered = 0;
    fc.assert(
      fc.property(severalLayouts, (changes) => {
        const of = withLayouts(...changes);
        if (!of) return;
        const { layouts, best, worst } = compare(of, of.layouts, quick);
        of.layouts.forEach((layout, index) => {
          const solution = solve(of, layout, false);
          const compared = layouts[index];
          expect(compared).toMatchObject({ name: layout.name, ok: solution.ok, findings: null });
          expect(compared?.reason).toEqual(solution.ok ? null : solution.faults);
          for (const measure of quick) {
            const value = solution.ok ? measureOf(measure, solution.value, null) : null;
            expect(compared?.values[measure.name]).toBe(value);
          }
        });
        const numbers = (name: string) => layouts.flatMap(({ values }) => values[name] ?? []);
        for (const { name, better } of quick) {
          const named = best[name];
          if (named === undefined) continue;
          answered += 1;
          const [least, most] = [Math.min(...numbers(name)), Math.max(...numbers(name))];
          expect(least).toBeLessThan(most);
          const valueOf = (layout = '') => layouts.find((one) => one.name === layout)?.values[name];
          // Values that differ by the dust of rounding are alike.
          expect(valueOf(named[0])).toBeCloseTo(better === 'less' ? least : most, 6);
          expect(valueOf(worst[name]?.[0])).toBeCloseTo(better === 'less' ? most : least, 6);
        }
      }),
      { numRuns: runs(100) },
    );
    expect(answered).toBeGreaterThan(runs(100));
  });

  test('says why a layout has no answer, and goes on with the others', () => {
    const of = sound(withLayouts({}, { '/layouts/0/placement/right/x': -400 }));
    const { layouts, stands } = compare(of, of.layouts, quick);
    expect(layouts.map(({ ok }) => ok)).toEqual([true, false]);
    expect(layouts[1]?.reason?.[0]?.pointer).toBe('/layouts/1/placement');
    expect(layouts[1]?.values.tilt).toBeNull();
    expect(stands).toEqual([]);
  });

  test('tells the findings where the sound is asked for', () => {
    const of = sound(withLayouts({}, { '/layouts/0/listener/setback': 400 }));
    const { layouts } = compare(of, of.layouts, measures.filter(({ name }) => name === 'cautions')); // prettier-ignore
    for (const [index, { findings }] of layouts.entries()) {
      const solution = solve(of, of.layouts[index] as Layout, false);
      expect(findings).toEqual(solution.ok && solution.value.findings);
    }
  });
});

describe('what differs in the input', () => {
  test('is only that, by its pointer', () => {
    const of = sound(
      withLayouts(
        {},
        {
          '/layouts/0/listener/setback': 250,
          '/layouts/0/monitors': [],
          '/layouts/0/aim/toe': { rule: 'as-set', degrees: 20 },
          '/layouts/0/stand/stop': { height: 10, thickness: 6 },
        },
      ),
    );
    const found = new Map(differencesOf(of.layouts).map(({ pointer, values }) => [pointer, values]));
    expect(found.get('/listener/setback')).toEqual([180, 250]);
    expect(found.get('/aim/toe/rule')).toEqual(['to-head', 'as-set']);
    expect(found.get('/aim/toe/degrees')).toEqual([null, 20]);
    expect(found.get('/stand/stop/height')).toEqual([null, 10]);
    expect(found.get('/monitors/0/width')).toEqual([615, null]);
    expect([...found.keys()].filter((pointer) => /name|entered|earHeight$/.test(pointer))).toEqual([]);
  });

  test('set in the first layout makes the second of it', () => {
    fc.assert(
      fc.property(severalLayouts, (changes) => {
        const of = withLayouts(...changes.slice(0, 2));
        const [one, other] = of?.layouts ?? [];
        if (!one || !other) return;
        const flat = (layout: Layout) => JSON.stringify({ ...layout, name: '' });
        const differs = differencesOf([one, other]);
        expect(differs.length === 0).toBe(flat(one) === flat(other));
        const rules = differs.some(({ pointer }) => pointer.startsWith('/aim'));
        if (rules) return;
        const changed = structuredClone(one) as unknown as Record<string, unknown>;
        for (const { pointer, values } of differs) {
          const steps = pointer.slice(1).split('/');
          const last = steps.pop() ?? '';
          const holder = steps.reduce((at, step) => at[step] as Record<string, unknown>, changed);
          holder[last] = values[1];
        }
        expect(flat(changed as unknown as Layout)).toBe(flat(other));
      }),
      { numRuns: runs(100) },
    );
  });

  test('is nothing between a layout and its copy', () => {
    expect(differencesOf(sound(withLayouts({}, {})).layouts)).toEqual([]);
  });
});

describe('best and worst', () => {
  const tilt = measures.find(({ name }) => name === 'tilt');
  const desk = measures.find(({ name }) => name === 'desk-level');
  if (!tilt || !desk) throw new Error('both are measures');
  const row = (name: string, values: Record<string, number | null>, ok = true) => ({ name, ok, values });

  test('are not told of values that differ by the dust of rounding', () => {
    expect(ranked(tilt, [row('a', { tilt: 10 }), row('b', { tilt: 10 + 1e-12 })])).toBeNull();
    expect(ranked(tilt, [row('a', { tilt: 10 }), row('b', { tilt: 10.1 }), row('c', { tilt: 10 })])).toEqual({
      best: ['a', 'c'],
      worst: ['b'],
    });
  });

  test('leave out what is not known, and take a reflection that never comes for the best', () => {
    expect(ranked(tilt, [row('a', { tilt: 10 }), row('b', { tilt: null })])).toBeNull();
    const values = [row('a', { 'desk-level': -3 }), row('b', { 'desk-level': null }), row('c', {}, false)];
    expect(ranked(desk, values)).toEqual({ best: ['b'], worst: ['a'] });
  });
});

describe('stands already cut', () => {
  /** A layout with the slope and height of somebody's stand on one side, planned by the document's own door. */
  function missOf(
    of: Project,
    index: number,
    side: 'left' | 'right',
    stand: { tilt: number; lift: number; toe: number | null },
  ) {
    const document = JSON.parse(JSON.stringify(of)) as { layouts: { aim: object; stand: object }[] };
    const layout = document.layouts[index];
    if (!layout) throw new Error('there is such a layout');
    const toe = stand.toe === null ? {} : { toe: { rule: 'as-set', degrees: stand.toe } };
    layout.aim = { ...layout.aim, ...toe, tilt: { rule: 'as-set', degrees: stand.tilt } };
    layout.stand = { ...layout.stand, lift: stand.lift };
    const checked = checkProject(document);
    const changed = checked.ok ? checked.value.layouts[index] : undefined;
    const planned = checked.ok && changed ? plan(checked.value, changed, false) : null;
    return planned?.ok ? planned.value.sides[side].miss : null;
  }

  test('miss what the layout misses with their slope and height set', () => {
    let answered = 0;
    fc.assert(
      fc.property(severalLayouts, fc.constantFrom('turned', 'square-to-desk'), (changes, base) => {
        const of = withLayouts(...changes.map((change) => ({ ...change, '/layouts/0/stand/base': base })));
        const [a, b] = of?.layouts.map((layout) => solve(of, layout, false)) ?? [];
        if (!of || !a?.ok || !b?.ok) return;
        const fit = standFit(a.value, b.value);
        if (!fit) return;
        const misses = sideNames.map((side) => {
          const { tilt, lift, toe } = a.value.sides[side];
          return missOf(of, 1, side, { tilt, lift, toe: base === 'turned' ? null : toe });
        });
        const known = misses.filter((miss) => miss !== null);
        if (known.length < 2) return;
        answered += 1;
        expect(fit.miss).toBeCloseTo(Math.max(...known), 6);
        if (base === 'turned') expect(fit.toe).toBe(0);
      }),
      { numRuns: runs(150) },
    );
    expect(answered).toBeGreaterThan(runs(150) / 6);
  });

  test('fit where they were made for, whatever else changed', () => {
    const of = sound(withLayouts({}, { '/layouts/0/monitors': [] }));
    const [a, b] = of.layouts.map((layout) => solve(of, layout, false));
    if (!a?.ok || !b?.ok) throw new Error('the demo has a plan');
    expect(standFit(a.value, b.value)).toMatchObject({ tilt: 0, toe: 0, lift: 0, fits: true });
    expect(standFit(a.value, b.value)?.miss).toBeCloseTo(0, 9);
  });

  test('do not fit where the head is far off their axis, and say by which limit', () => {
    // A dome of 50 mm is 3 dB down at 10 kHz where 2π · 25 mm / 34.3 mm · sin = 1.61: 20.6 degrees off its axis.
    const wide = {
      '/speaker/designPoint': { rule: 'none' },
      '/speaker/drivers/0/diameter': 60,
      '/speaker/drivers/0/radiating': 50,
    };
    const of = sound(withLayouts(wide, { ...wide, '/layouts/0/listener/earHeight': 1500 }));
    const [a, b] = of.layouts.map((layout) => solve(of, layout, false));
    if (!a?.ok || !b?.ok) throw new Error('both have a plan');
    const fit = standFit(a.value, b.value);
    expect(fit).toMatchObject({ fits: false, by: 'treble' });
    expect(fit?.offAxis).toBeGreaterThan(20.6);
    // The slope that is missing raises the axis by as much.
    expect(fit?.tilt).toBeLessThan(0);
  });
});

describe('a comparison in steps', () => {
  test('tells first what is quickly known, then the sound with its findings, and ends as the whole does', () => {
    const of = sound(withLayouts({}, { '/layouts/0/listener/setback': 300 }));
    const answers: Comparison[] = [];
    const shares: number[] = [];
    // Sheets take seconds; the step that tells them does not care how many there are.
    const by = comparedBy.map((measure): Measure =>
      measure.needs === 'sheets' ? { ...measure, of: () => 4 } : measure,
    );
    const steps = compareSteps(of, of.layouts, by);
    let step = steps.next();
    for (; !step.done; step = steps.next()) {
      if ('share' in step.value) shares.push(step.value.share);
      else answers.push(step.value.answer);
    }
    const whole = compare(of, of.layouts, by);
    expect(step.value).toEqual(whole);
    const needed = (...needs: readonly Measure['needs'][]) =>
      by.filter((measure) => needs.includes(measure.needs)).map(({ name }) => name);
    const quickly = needed('aim', 'bodies', 'stands');
    expect(answers.map(({ layouts }) => Object.keys(layouts[0]?.values ?? {}).toSorted())).toEqual(
      [quickly, [...quickly, ...needed('heard', 'sound')]].map((names) => names.toSorted()),
    );
    expect(answers.map(({ layouts }) => layouts.map(({ findings }) => findings !== null))).toEqual([[false, false], [true, true]]); // prettier-ignore
    // What was told early stays as it was told.
    for (const { layouts, stands, differs } of answers) {
      expect(stands).toEqual(whole.stands);
      expect(differs).toEqual(whole.differs);
      layouts.forEach(({ values }, index) => expect(whole.layouts[index]?.values).toMatchObject(values));
    }
    expect(shares).toEqual([0.5, 1, 0.5, 1]);
  });
});
