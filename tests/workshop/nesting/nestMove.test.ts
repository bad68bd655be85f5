import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainText } from '$lib/project/sentence.ts';
import { asCutter, wedge } from '../shapes.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import {
  lockIndex,
  lockOf,
  movePlacement,
  turnPlacement,
  type Bench,
  type Moved,
} from '$lib/workshop/nesting/nestMove.ts';
import { nested } from '$lib/workshop/nesting/nest.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import { placementOf } from '$lib/workshop/nesting/nestLocks.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Stock } from '$lib/project/project.ts';
import { runs } from '../../runs.ts';

const board = (more: Partial<Stock> = {}): Stock => ({
  name: 'board',
  thickness: 3,
  sheet: { width: 600, height: 300 },
  density: 750,
  ...asCutter,
  ...more,
});
const slice = wedge(120, 10, 40, { quantity: 2 });
const bench = (stock = board()): Bench => ({
  parts: [slice],
  stocks: [stock],
  cutter: { kerf: 0.2, taper: 0, spacing: 2, margin: 5 },
});
const at = (x: number, y: number, turn = 0) => ({ part: 'slice', x, y, turn });
const sheet = (number: number, ...placements: Sheet['placements']): Sheet => ({
  stock: 'board',
  number,
  width: 600,
  height: 300,
  placements,
  fill: 0,
});
const two = [sheet(1, at(5, 5), at(300, 5)), sheet(2)];
const first = { sheet: 0, placement: 0 };
const sheetsOf = (moved: Moved): readonly Sheet[] => {
  if (!moved.ok) throw new Error(plainText(moved.refusal.message));
  return moved.sheets;
};
const why = (moved: Moved) => (moved.ok ? null : { ...moved.refusal, message: plainText(moved.refusal.message) });

describe('moving by hand', () => {
  it('keeps what is valid valid, and gives back the reason for anything else', () => {
    const place = fc.double({ min: -50, max: 620, noNaN: true });
    fc.assert(
      fc.property(place, place, fc.integer({ min: 0, max: 1 }), (x, y, to) => {
        const moved = movePlacement(two, first, { sheet: to, x, y }, bench());
        const laid = moved.ok ? moved.sheets : two;
        expect(layoutFaults(laid, [slice], 2, 5)).toEqual([]);
        if (!moved.ok) {
          // Refused for a reason: the independent check refuses it too.
          const forced = two.map((one, i) => ({
            ...one,
            placements: [...(i === 0 ? one.placements.slice(1) : one.placements), ...(i === to ? [at(x, y)] : [])],
          }));
          expect(layoutFaults(forced, [slice], 2, 5)).not.toEqual([]);
          return;
        }
        expect(moved.sheets[to]?.placements[moved.which.placement]).toEqual(at(x, y));
      }),
    );
  });

  it('says which of margin and neighbour is in the way', () => {
    expect(why(movePlacement(two, first, { sheet: 0, x: 4, y: 5 }, bench()))).toEqual({
      reason: 'margin',
      message: 'expected part "slice" at least 5 mm from the sheet\'s edge, got 4.000 mm',
    });
    expect(why(movePlacement(two, first, { sheet: 0, x: 300, y: 5 }, bench()))).toEqual({
      reason: 'overlap',
      message: 'expected part "slice" clear of "slice", got an overlap',
    });
    expect(why(movePlacement(two, first, { sheet: 0, x: 179, y: 5 }, bench()))?.message).toBe(
      'expected 2 mm between part "slice" and "slice", got 1.000 mm',
    );
    expect(why(movePlacement(two, first, { sheet: 7, x: 5, y: 5 }, bench()))?.reason).toBe('no-sheet');
    expect(why(movePlacement(two, { sheet: 1, placement: 0 }, { sheet: 1, x: 5, y: 5 }, bench()))?.reason).toBe(
      'no-part',
    );
  });

  it('reckons the fill of both sheets anew', () => {
    const [from, to] = sheetsOf(movePlacement(two, first, { sheet: 1, x: 50, y: 50 }, bench()));
    const area = (120 * (10 + 40)) / 2;
    expect([from?.fill, to?.fill]).toEqual([area / (600 * 300), area / (600 * 300)]);
  });
});

describe('turning by hand', () => {
  it('turns about the middle, four times back to the start', () => {
    let sheets: readonly Sheet[] = [sheet(1, at(200, 130), at(400, 5))];
    const middle = (one: readonly Sheet[]) => {
      const { left, right, bottom, top } = extentOf(placedContour(slice.outside, one[0]?.placements[0] ?? at(0, 0)));
      return [(left + right) / 2, (bottom + top) / 2];
    };
    const start = middle(sheets);
    for (const quarters of [1, 2, 3, 0]) {
      sheets = sheetsOf(turnPlacement(sheets, first, bench()));
      expect(sheets[0]?.placements[0]?.turn).toBe((quarters * Math.PI) / 2);
      middle(sheets).forEach((value, i) => expect(value).toBeCloseTo(start[i] ?? NaN, 9));
    }
    expect(sheets[0]?.placements[0]?.x).toBeCloseTo(200, 9);
  });

  it('goes on by half turns along the grain, and back where it does not fit', () => {
    const along = bench(board({ grain: 'along' }));
    expect(sheetsOf(turnPlacement(two, first, along))[0]?.placements[0]?.turn).toBe(Math.PI);
    expect(why(turnPlacement(two, first, bench()))?.reason).toBe('margin');
  });
});

describe('what is held', () => {
  it('comes back from the project as the same placement, and lies there in the next arrangement', () => {
    const quarters = fc.integer({ min: 0, max: 3 });
    const place = fc.double({ min: 130, max: 160, noNaN: true });
    fc.assert(
      fc.property(place, place, quarters, (x, y, turn) => {
        const placement = at(x, y, (turn * Math.PI) / 2);
        const lock = lockOf(sheet(1), placement);
        expect(placementOf(lock)).toEqual(placement);
        const { parts, stocks, cutter } = bench();
        const laid = nested(parts, stocks, cutter, { locked: [lock], budget: 1000 });
        if (!laid.ok) throw new Error('two wedges fit');
        expect(laid.value.released).toEqual([]);
        const [one] = laid.value.sheets;
        const found = one?.placements.filter((other) => lockIndex([lock], one, other) === 0);
        expect(found).toHaveLength(1);
      }),
      { numRuns: runs(30) },
    );
  });
});
