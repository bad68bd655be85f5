import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { surfaceReflections } from '$lib/solution/leadingReflections.ts';
import { solve } from '$lib/solution/solve.ts';
import { formulas, workingOf, type Working } from '$lib/solution/working.ts';
import type { Formula } from '$lib/solution/working/formula.ts';
import { quantitiesIn, type Subject, type Unit } from '$lib/solution/working/term.ts';
import { sideNames } from '$lib/project/project.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { plainText } from '$lib/project/sentence.ts';
import { runs } from '../runs.ts';

const lists = { Postures: 2, Drivers: 2, Crossovers: 1, Reflections: 2, Stability: 4 } as const;
const count = ({ topic }: Formula): number => (topic in lists ? lists[topic as keyof typeof lists] : 1);

/** Every formula with the numbers of a desk, for both sides and every entry of a list; none where the desk has no plan. */
function workings(changes: Readonly<Record<string, unknown>>, unit: LengthUnit = 'mm'): Working[] {
  const of = project(changes);
  const layout = firstLayout(of);
  const planned = solve(of, layout);
  if (!planned.ok) return [];
  const has = (formula: Formula, { index }: Subject): boolean =>
    formula.topic !== 'Reflections' || surfaceReflections(planned.value)[index] !== undefined;
  return sideNames.flatMap((side) =>
    formulas.flatMap((formula) =>
      Array.from({ length: count(formula) }, (_, index): Subject => ({
        project: of,
        layout,
        plan: planned.value,
        side,
        index,
      }))
        .filter((subject) => has(formula, subject))
        .flatMap((subject) => workingOf(formula.id, subject, unit) ?? []),
    ),
  );
}

/** A formula is written for reading, the kernel for its last digits: they part at 1e-8 of a number near nothing. */
const near = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= 1e-8 * Math.max(1, Math.abs(a), Math.abs(b));

const designs = [
  {},
  { '/speaker/designPoint': { rule: 'none' } },
  { '/speaker/designPoint': { driver: 'tweeter', distance: 1000 } },
  { '/speaker/designPoint': { driver: 'woofer', distance: 600 }, '/speaker/crossovers/0/alignment': 'quadrature' },
];

describe('the working', () => {
  test('comes to the plan’s own number, on any desk', () => {
    fc.assert(
      fc.property(anyDesk, fc.constantFrom(...designs), (changes, design) => {
        for (const { formula, holds, value, comesTo } of workings({ ...changes, ...design })) {
          if (holds)
            expect([formula.id, near(comesTo, value), comesTo, value]).toEqual([formula.id, true, comesTo, value]);
        }
      }),
    );
  });

  test('holds for the demo, but for the lift, which is given, and a push that takes the cabinet alone', () => {
    const demo = workings({ '/speaker/designPoint': { driver: 'tweeter', distance: 1000 } });
    expect([...new Set(demo.filter(({ holds }) => !holds).map(({ formula }) => formula.id))]).toEqual(['lift', 'push']);
    for (const { formula, value, figures } of demo) {
      expect([formula.id, Number.isFinite(value)]).toEqual([formula.id, true]);
      for (const figure of figures)
        expect([formula.id, figure.quantity.letter, Number.isFinite(figure.value)]).toEqual([
          formula.id,
          figure.quantity.letter,
          true,
        ]);
    }
  });

  test('comes to the same in inches, with every length, volume and speed in inches', () => {
    // One inch is 25.4 mm.
    const perInch: Partial<Record<Unit, readonly [Unit, number]>> = {
      mm: ['in', 25.4],
      'mm³': ['in³', 25.4 ** 3],
      'mm/ms': ['in/ms', 25.4],
    };
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const metric = workings(changes);
        for (const [place, { formula, holds, value, comesTo, figures }] of workings(changes, 'in').entries()) {
          const before = metric[place];
          if (!before) throw new Error(`${formula.id} has no working in mm`);
          if (holds) expect([formula.id, near(comesTo, value), comesTo]).toEqual([formula.id, true, comesTo]);
          const shown = [{ quantity: formula.result, value }, ...figures];
          const written = [{ quantity: before.formula.result, value: before.value }, ...before.figures];
          for (const [row, { quantity, value: worth }] of written.entries()) {
            const [unit, size] = perInch[quantity.unit] ?? [quantity.unit, 1];
            expect([quantity.letter, shown[row]?.quantity.unit]).toEqual([quantity.letter, unit]);
            expect(near((shown[row]?.value ?? NaN) * size, worth) || Object.is(worth, NaN)).toBe(true);
          }
        }
      }),
      { numRuns: runs(30) },
    );
  });

  test('has none for a sum that is not known', () => {
    const ids = new Set(workings({ '/speaker/designPoint': { rule: 'none' } }).map(({ formula }) => formula.id));
    expect([ids.has('path'), ids.has('phase'), ids.has('sum')]).toEqual([true, true, false]);
  });

  test('finds the lift where the rule does', () => {
    const found = workings({
      '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 8 },
      '/layouts/0/stand': { build: 'stacked' },
    }).filter(({ formula }) => formula.id === 'lift');
    expect(found.map(({ holds }) => holds)).toEqual([true, true]);
    for (const { comesTo, value } of found) expect(comesTo).toBeCloseTo(value, 9);
  });

  test('knows no formula that is not there', () => {
    const of = project();
    const layout = firstLayout(of);
    const planned = solve(of, layout);
    if (planned.ok)
      expect(workingOf('mood', { project: of, layout, plan: planned.value, side: 'left', index: 0 })).toBeNull();
    expect(planned.ok).toBe(true);
  });
});

describe('each formula', () => {
  test.each(formulas.map((formula) => [formula.id, formula] as const))('%s says all of itself', (_, formula) => {
    if (formula.source !== undefined) expect(formula.source.length).toBeGreaterThan(5);
    if (formula.limits !== undefined) expect(plainText(formula.limits)).toMatch(/\.$/);
    expect(formula.holds === undefined).toBe(formula.when === undefined);
    const letters = [formula.result, ...quantitiesIn(formula.term)].map(
      ({ letter, below }) => `${letter}_${below ?? ''}`,
    );
    expect(new Set(letters).size).toBe(letters.length);
  });

  test('has a name of its own', () => {
    const ids = formulas.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
