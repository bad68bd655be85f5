import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyWedge, asCutter, partOf, wedgeCorners } from '../shapes.ts';
import { arrange, HAIR } from '$lib/workshop/nesting/arrange.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { fillRoom } from '$lib/workshop/nesting/fillRoom.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { fillWithBoxes } from '$lib/workshop/nesting/boxFill.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { nestable, originOf, type Nestable } from '$lib/workshop/nesting/nestable.ts';
import { numberFrom } from '../../numbers.ts';
import { pairBoxes } from '../../../bench/pairBoxes.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { rowsFor, type Room } from '$lib/workshop/nesting/rows.ts';
import type { Filled } from '$lib/workshop/nesting/strips.ts';
import type { Point } from '$lib/geometry/point.ts';
import { runs } from '../../runs.ts';

const cutter = { kerf: 0.2, taper: 0, spacing: 2, margin: 5 };
const spacing = cutter.spacing + HAIR;

const anyRoom = fc.record({ width: numberFrom(100, 900), height: numberFrom(60, 600) });
const anyCorners = fc.oneof(
  fc
    .tuple(numberFrom(40, 260), numberFrom(5, 25), numberFrom(15, 65))
    .map(([run, thin, thick]) => wedgeCorners(run, thin, thick)),
  fc.tuple(numberFrom(40, 260), numberFrom(20, 110)).map(([width, height]): Point[] => [
    [0, 0],
    [width, 0],
    [0, height],
  ]),
);

it('a room is filled in its own frame, wherever it lies', () => {
  fc.assert(
    fc.property(anyCorners, anyRoom, fc.integer({ min: 1, max: 60 }), (corners, room, wanted) => {
      const item = nestable(partOf('part', polygonPath(corners)), spacing, true);
      const away = { ...room, x: 1000, y: 2000 };
      expect(toTheEnd(fillRoom(item, away, spacing, wanted))).toEqual(toTheEnd(fillRoom(item, room, spacing, wanted)));
      expect(fillWithBoxes(item, away, spacing, wanted)).toEqual(fillWithBoxes(item, room, spacing, wanted));
    }),
    { numRuns: runs(200) },
  );
});

/** As many bounding boxes as stand in a room in plain rows, all at the turn that takes more. */
const inGrid = ({ views }: Nestable, room: Room): number =>
  Math.max(
    ...views
      .filter(({ swapped }) => !swapped)
      .map(
        ({ width, height }) =>
          Math.max(0, Math.floor((room.width + spacing) / (width + spacing))) *
          Math.max(0, Math.floor((room.height + spacing) / (height + spacing))),
      ),
  );

/** A filling's copies as sheets have them, on a board with a margin of 0. */
function sheetOf(item: Nestable, { spots }: Filled, room: Room) {
  const placements = spots.map(({ x, y, quarters }) => {
    const [originX, originY] = originOf(item, quarters);
    return { part: item.part.name, x: x + originX, y: y + originY, turn: (quarters * Math.PI) / 2 };
  });
  return { stock: 'board', number: 1, ...room, placements, fill: 0 };
}

describe('a board filled with copies of one part', () => {
  it('holds at least what pairs packed as boxes reach by another reckoning, and what a plain grid holds', () => {
    fc.assert(
      fc.property(anyCorners, anyRoom, fc.boolean(), (corners, room, quarterTurns) => {
        const item = nestable(partOf('part', polygonPath(corners)), spacing, quarterTurns);
        const reached = toTheEnd(fillRoom(item, room, spacing, 10_000)).spots.length;
        expect(reached).toBeGreaterThanOrEqual(pairBoxes(corners, room, spacing, quarterTurns));
        expect(reached).toBeGreaterThanOrEqual(inGrid(item, room));
        for (const view of item.views) {
          if (view.swapped) continue;
          const [first] = rowsFor(view, room, spacing, 10_000);
          expect(reached).toBeGreaterThanOrEqual((first?.copies.length ?? 0) * (first?.fits ?? 0));
        }
      }),
      { numRuns: runs(150) },
    );
  });

  it('is arranged on one sheet when so many are asked for, turned by quarters or not', () => {
    fc.assert(
      fc.property(anyCorners, anyRoom, fc.boolean(), (corners, { width, height }, quarterTurns) => {
        const room = { width: width - 2 * cutter.margin, height: height - 2 * cutter.margin };
        const quantity = pairBoxes(corners, room, spacing, quarterTurns);
        fc.pre(quantity > 0);
        const stock = { name: 'board', thickness: 3, sheet: { width, height }, density: 750, ...asCutter };
        const parts = [partOf('part', polygonPath(corners), { quantity })];
        const sheets = arrange(parts, [stock], cutter, { quarterTurns });
        expect(sheets.ok && sheets.value.length).toBe(1);
      }),
      { numRuns: runs(60) },
    );
  });
});

describe('boxes of one copy or two', () => {
  it('keep the spacing, stay in the room, leave free what they say, and are never more than wanted', () => {
    fc.assert(
      fc.property(anyWedge, anyRoom, fc.integer({ min: 1, max: 60 }), fc.boolean(), (part, room, wanted, turns) => {
        const item = nestable(part, spacing, turns);
        const filled = fillWithBoxes(item, room, spacing, wanted);
        const sheet = sheetOf(item, filled, room);
        expect(filled.spots.length).toBeLessThanOrEqual(wanted);
        expect(layoutFaults([sheet], [{ ...part, quantity: filled.spots.length }], cutter.spacing, 0)).toEqual([]);
        const boxes = sheet.placements.map((placement) => extentOf(placedContour(part.outside, placement)));
        for (const { x, y, width, height } of filled.free) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThanOrEqual(room.width + 1e-9);
          expect(y + height).toBeLessThanOrEqual(room.height + 1e-9);
          for (const { left, right, bottom, top } of boxes) {
            const gap = Math.max(left - (x + width), x - right, bottom - (y + height), y - top);
            expect(gap).toBeGreaterThan(cutter.spacing);
          }
        }
        expect(fillWithBoxes(item, room, spacing, wanted)).toEqual(filled);
      }),
      { numRuns: runs(100) },
    );
  });

  it('are none where no copy fits', () => {
    const item = nestable(partOf('part', polygonPath(wedgeCorners(200, 10, 40))), spacing, true);
    const room = { width: 150, height: 150 };
    expect(fillWithBoxes(item, room, spacing, 5)).toEqual({ spots: [], free: [{ x: 0, y: 0, ...room }] });
  });
});
