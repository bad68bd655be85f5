import { areaPathsD, EndType, FillRule, inflatePathsD, intersectD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { anyWedge, asCutter, cornersOf, lippedCorners, partOf, slotted, wedge } from '../shapes.ts';
import { arrange } from '$lib/workshop/nesting/arrange.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { lockOf } from '$lib/workshop/nesting/nestMove.ts';
import { luby } from '$lib/workshop/nesting/nestImprove.ts';
import { PACE } from '$lib/workshop/nesting/nestShapes.ts';
import { nest, nested, type Nested, type NestOptions } from '$lib/workshop/nesting/nest.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import type { Locked, Stock } from '$lib/project/project.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';
import { runs } from '../../runs.ts';
import { plainText } from '$lib/project/sentence.ts';
import { plainly } from '../../plainly.ts';

const board = (width: number, height: number, more: Partial<Stock> = {}): Stock => ({
  name: 'board',
  thickness: 3,
  sheet: { width, height },
  density: 750,
  ...asCutter,
  ...more,
});
const cutter = { kerf: 0.2, taper: 0, spacing: 2, margin: 5 };
/** Pairs of pieces looked at: a fraction of a second. */
const SMALL = 400_000;

const answer = (parts: readonly Part[], stocks: readonly Stock[], options: NestOptions = {}): Nested => {
  const result = nested(parts, stocks, cutter, { budget: SMALL, ...options });
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('\n'));
  return result.value;
};
const outlinesOf = (sheet: Sheet, parts: readonly Part[]) =>
  sheet.placements.map((placement) => {
    const part = parts.find(({ name }) => name === placement.part);
    if (part === undefined) throw new Error(`expected a part named ${placement.part}`);
    return cornersOf(placedContour(part.outside, placement));
  });

/** Two library calls that share nothing with the code under test: outlines grown by half the spacing have no area in common. */
function expectClear(sheet: Sheet, parts: readonly Part[], spacing: number): void {
  const grown = outlinesOf(sheet, parts).map((outline) =>
    inflatePathsD([outline], spacing / 2, JoinType.Round, EndType.Polygon, 2, 4),
  );
  grown.forEach((first, i) => {
    for (const second of grown.slice(i + 1)) {
      expect(Math.abs(areaPathsD(intersectD(first, second, FillRule.NonZero, 4)))).toBeLessThan(1e-3);
    }
  });
}

const several = fc.array(fc.record({ wedge: anyWedge, quantity: fc.integer({ min: 1, max: 14 }) }), {
  minLength: 1,
  maxLength: 3,
});
const named = (list: readonly { readonly wedge: Part; readonly quantity: number }[]): Part[] =>
  list.map(({ wedge: part, quantity }, i) => ({ ...part, name: `part ${i}`, quantity }));
const triangle = (quantity: number): Part =>
  partOf(
    'corner',
    polygonPath([
      [0, 0],
      [150, 0],
      [0, 90],
    ]),
    { quantity },
  );

describe('every answer on the way', () => {
  it('passes the independent check and another library’s, holds every copy, and takes no more sheets than the one before', () => {
    fc.assert(
      fc.property(several, fc.integer({ min: 5, max: 40 }), fc.boolean(), (list, tenths, along) => {
        const parts = named(list);
        const spaces = { ...cutter, spacing: tenths / 10 };
        const stock = board(420, 310, {
          grain: along ? 'along' : 'none',
          offcuts: [{ width: 300, height: 120, count: 1 }],
        });
        let before = Infinity;
        for (const step of nest(parts, [stock], spaces, { budget: SMALL })) {
          if (step.kind !== 'better') continue;
          const { sheets, stocks } = step.nested;
          expect(layoutFaults(sheets, parts, spaces.spacing, spaces.margin)).toEqual([]);
          const [result] = stocks;
          expect(result?.sheets).toBeLessThanOrEqual(before);
          expect(result?.sheets).toBeGreaterThanOrEqual(result?.least ?? Infinity);
          before = result?.sheets ?? 0;
          const quarters = sheets.flatMap(({ placements }) => placements.map(({ turn }) => turn / (Math.PI / 2)));
          if (along) expect(quarters.every((turn) => turn % 2 === 0)).toBe(true);
          for (const sheet of sheets) expectClear(sheet, parts, spaces.spacing);
        }
        expect(before).toBeLessThan(Infinity);
      }),
      { numRuns: runs(12) },
    );
  });

  it('takes concave parts: lips lie in each other’s hollows, arcs and all', () => {
    const lip = partOf('lip', polygonPath(lippedCorners(220, 12, 50, 20, 10)), { quantity: 18 });
    const { sheets } = answer([lip], [board(600, 300)], { budget: 3_000_000 });
    expect(layoutFaults(sheets, [lip], 2, 5)).toEqual([]);
    for (const sheet of sheets) expectClear(sheet, [lip], 2);
  });

  it('never needs more whole sheets than the first arrangement', () => {
    fc.assert(
      fc.property(several, (list) => {
        const parts = named(list);
        const first = arrange(parts, [board(420, 310)], cutter);
        expect(answer(parts, [board(420, 310)]).sheets.length).toBeLessThanOrEqual(first.ok ? first.value.length : 0);
      }),
      { numRuns: runs(8) },
    );
  });
});

describe('improving', () => {
  it('puts 22 triangles on a sheet that takes 18 in rows', () => {
    const parts = [triangle(22)];
    const stock = board(600, 300, { grain: 'along' });
    const first = arrange(parts, [stock], cutter);
    expect(first.ok && first.value.length).toBe(2);
    const { sheets, stocks } = answer(parts, [stock], { seed: 2, budget: 20_000_000 });
    expect(sheets.map(({ placements }) => placements.length)).toEqual([22]);
    expect(stocks).toEqual([{ stock: 'board', sheets: 1, least: 1, offcuts: 0 }]);
    expect(layoutFaults(sheets, parts, 2, 5)).toEqual([]);
  });

  it('gives the same bytes for the same seed, and its progress never goes back', () => {
    const parts = [triangle(21), { ...wedge(120, 10, 40), quantity: 6 }];
    const run = (seed: number): string =>
      JSON.stringify([...nest(parts, [board(600, 300)], cutter, { seed, budget: SMALL })]);
    expect(run(7)).toBe(run(7));
    expect(run(7)).not.toBe(run(8));
    let share = 0;
    for (const step of nest(parts, [board(600, 300)], cutter, { budget: SMALL })) {
      if (step.kind !== 'progress') continue;
      expect(step.share).toBeGreaterThanOrEqual(share);
      share = step.share;
    }
    expect(share).toBe(1);
  });

  it('can be left at any step with a whole answer in hand', () => {
    const parts = [triangle(40)];
    const steps = nest(parts, [board(600, 300)], cutter);
    let first = steps.next().value;
    while ('kind' in first && first.kind === 'progress' && first.share === 0) first = steps.next().value;
    if (!('kind' in first) || first.kind !== 'better') throw new Error('expected an answer before the search');
    expect(layoutFaults(first.nested.sheets, parts, 2, 5)).toEqual([]);
    expect(steps.next().done).toBe(false);
    expect(steps.return({ ok: false, faults: [] }).done).toBe(true);
  });

  it('works nowhere long without a pause, and keeps to the work allowed: 154 copies of two slotted parts', () => {
    const parts = [
      partOf('rib', slotted(200, 20, 60, 3), { quantity: 77 }),
      partOf('cross rib', slotted(160, 30, 40, 2), { quantity: 77 }),
    ];
    const BUDGET = 2_000_000;
    // One pause may be missed where a stage ends, and one try on a full board looked at in between.
    const MOST = 5 * PACE;
    let [share, longest, before] = [0, 0, 0];
    let answered = false;
    for (const step of nest(parts, [board(600, 400)], cutter, { budget: BUDGET })) {
      if (step.kind === 'better') answered = true;
      else {
        longest = Math.max(longest, step.share - share);
        share = step.share;
      }
      if (!answered) before++;
    }
    expect(share).toBe(1);
    expect(longest * BUDGET).toBeGreaterThan(0);
    expect(longest * BUDGET).toBeLessThan(MOST);
    // Neither the first arrangement nor its check is done in one go.
    expect(before).toBeGreaterThan(100);
  });

  it('ends without its best when laying round held parts takes too much work, with every copy on a sheet', () => {
    const part = partOf('rib', slotted(200, 20, 60, 3), { quantity: 40 });
    const first = nested([part], [board(600, 400)], cutter, { budget: 0 });
    if (!first.ok) throw new Error('expected sheets');
    const [sheet] = first.value.sheets;
    const [placement] = sheet?.placements ?? [];
    if (sheet === undefined || placement === undefined) throw new Error('expected a placement');
    const locked = [lockOf(sheet, placement)];
    const held = nested([part], [board(600, 400)], cutter, { budget: 0, locked });
    if (!held.ok) throw new Error('expected sheets');
    expect(layoutFaults(held.value.sheets, [part], 2, 5)).toEqual([]);
    expect(held.value.released).toEqual([]);
  });

  it('begins with short tries, and doubles now and then (Luby, Sinclair and Zuckerman 1993, the sequence as published)', () => {
    expect(Array.from({ length: 15 }, (_, i) => luby(i + 1))).toEqual([1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]);
  });
});

describe('offcuts and sheets at hand', () => {
  it('uses offcuts before whole sheets and numbers both from 1', () => {
    const parts = [wedge(220, 12, 50, { quantity: 30 })];
    const offcuts = [{ width: 250, height: 140, count: 2 }];
    const { sheets, stocks } = answer(parts, [board(600, 300, { offcuts })]);
    expect(sheets.map(({ offcut = false, number, width }) => [offcut, number, width])).toEqual([
      [true, 1, 250],
      [true, 2, 250],
      [false, 1, 600],
    ]);
    expect(stocks).toEqual([{ stock: 'board', sheets: 1, least: 1, offcuts: 2 }]);
    expect(layoutFaults(sheets, parts, 2, 5)).toEqual([]);
  });

  it('counts offcuts into the bound, but none that no part fits', () => {
    const parts = [wedge(220, 12, 50, { quantity: 40 })];
    const least = (offcuts: Stock['offcuts']): number | undefined =>
      answer(parts, [board(600, 300, { offcuts })]).stocks[0]?.least;
    expect(least([])).toBe(2);
    expect(least([{ width: 600, height: 300, count: 1 }])).toBe(1);
    // As large, but each too narrow for a part.
    expect(least([{ width: 200, height: 20, count: 50 }])).toBe(2);
  });

  it('says when there are fewer sheets than it takes', () => {
    const parts = [wedge(220, 12, 50, { quantity: 50 })];
    const stock = board(600, 300, { sheets: 2 });
    expect(answer(parts, [stock]).short.map(plainly)).toEqual([
      { pointer: '/stock/0/sheets', message: 'expected the parts on 2 sheets of "board", as many as there are, got 3' },
    ]);
    expect(arrange(parts, [stock], cutter)).toEqual({ ok: false, faults: answer(parts, [stock]).short });
    expect(answer([{ ...wedge(220, 12, 50), quantity: 44 }], [stock]).short).toEqual([]);
  });

  it('refuses a kerf of a stock that is wider than the spacing', () => {
    expect(plainly(nested([wedge(50, 5, 9)], [board(600, 300, { kerf: 3 })], cutter))).toEqual({
      ok: false,
      faults: [{ pointer: '/stock/0/kerf', message: 'expected a kerf of at most the spacing of 2 mm, got 3 mm' }],
    });
  });
});

describe('held parts', () => {
  const lock = (more: Partial<Locked> = {}): Locked => ({
    part: 'slice',
    sheet: 1,
    offcut: false,
    x: 300,
    y: 150,
    turn: 0,
    ...more,
  });
  const parts = [wedge(120, 10, 40, { quantity: 30 })];
  const placementsOf = ({ sheets }: Nested) =>
    sheets.flatMap((sheet) => sheet.placements.map((placement) => ({ sheet, placement })));

  it('stay exactly where they are while the rest is arranged round them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 470, noNaN: true }),
        fc.double({ min: 5, max: 250, noNaN: true }),
        fc.integer({ min: 1, max: 3 }),
        (x, y, sheet) => {
          const locked = [lock({ x, y, sheet })];
          for (const step of nest(parts, [board(600, 300)], cutter, { locked, budget: SMALL })) {
            if (step.kind !== 'better') continue;
            const { sheets, released } = step.nested;
            expect(layoutFaults(sheets, parts, 2, 5)).toEqual([]);
            expect(released).toEqual([]);
            const held = placementsOf(step.nested).filter(
              ({ sheet: { number }, placement }) =>
                number === sheet && placement.x === x && placement.y === y && placement.turn === 0,
            );
            expect(held).toHaveLength(1);
            expect(new Set(sheets.map(({ number }) => number)).size).toBe(sheets.length);
          }
        },
      ),
      { numRuns: runs(10) },
    );
  });

  it('give exactly the sheets they were taken from, where they are all parts of any arrangement on the way', () => {
    let arrangements = 0;
    fc.assert(
      fc.property(
        several,
        fc.integer({ min: 1, max: 99 }),
        fc.double({ min: 5, max: 9, noNaN: true }),
        fc.boolean(),
        (list, seed, margin, along) => {
          const own = named(list);
          const spaces = { ...cutter, margin };
          const stock = board(420, 310, {
            grain: along ? 'along' : 'none',
            offcuts: [{ width: 300, height: 120, count: 1 }],
          });
          for (const step of nest(own, [stock], spaces, { seed, budget: SMALL / 8 })) {
            if (step.kind !== 'better') continue;
            const { sheets } = step.nested;
            const locked = sheets.flatMap((sheet) => sheet.placements.map((placement) => lockOf(sheet, placement)));
            // As from a project file, with another seed and all the work that nesting may take.
            const again = nested(own, [stock], spaces, { seed: seed + 1, locked: JSON.parse(JSON.stringify(locked)) });
            expect(again).toMatchObject({ ok: true, value: { released: [], short: [] } });
            expect(again.ok && again.value.sheets).toEqual(sheets);
            arrangements += 1;
          }
        },
      ),
      { numRuns: runs(30) },
    );
    expect(arrangements).toBeGreaterThanOrEqual(runs(30));
  });

  it('are let go with the reason when they no longer fit', () => {
    const locked = [
      lock({ part: 'gone' }),
      lock({ x: 500 }),
      lock(),
      lock({ x: 320 }),
      lock({ turn: 90, x: 200 }),
      lock({ sheet: 3 }),
      lock({ offcut: true }),
      lock({ x: 5, y: 5 }),
    ];
    const two = [wedge(120, 10, 40, { quantity: 2 })];
    const stock = board(600, 300, { grain: 'along', sheets: 2 });
    const { released, sheets } = answer(two, [stock], { locked: [...locked, lock({ x: 5, y: 200 })] });
    expect(released.map(({ index, reason }) => [index, reason])).toEqual([
      [0, 'no-part'],
      [1, 'margin'],
      [3, 'overlap'],
      [4, 'grain'],
      [5, 'no-sheet'],
      [6, 'no-sheet'],
      [8, 'too-many'],
    ]);
    expect(released.map(({ message }) => plainText(message))).toEqual([
      'expected a part named "gone", got none',
      'expected part "slice" at least 5 mm from the sheet\'s edge, got -20.000 mm',
      'expected part "slice" clear of "slice", got an overlap',
      'expected part "slice" along the grain, got a turn of 90°',
      'expected one of 2 sheets of "board", got number 3',
      'expected one of 0 offcuts of "board", got number 1',
      'expected at most 2 of part "slice", got 3',
    ]);
    expect(layoutFaults(sheets, two, 2, 5)).toEqual([]);
  });
});

describe('refused before any work', () => {
  it('a million copies, a part larger than its sheet', () => {
    const faultsOf = (part: Part) => {
      const result = nested([part], [board(600, 300)], cutter);
      return result.ok ? [] : result.faults.map(({ pointer }) => pointer);
    };
    expect(faultsOf(wedge(220, 12, 50, { quantity: 1_000_000 }))).toEqual(['/stock']);
    expect(faultsOf(wedge(700, 12, 50))).toEqual(['/stock/0/sheet']);
  });
});
