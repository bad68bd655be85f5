import { readFileSync, readdirSync } from 'node:fs';
import { areaPathsD, FillRule, inflatePathsD, EndType, intersectD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { arrange } from '$lib/workshop/nesting/arrange.ts';
import { around } from '$lib/geometry/extent.ts';
import { faultLine } from '$lib/project/fault.ts';
import { anyWedge, asCutter, cornersOf, partOf } from '../workshop/shapes.ts';
import { leastSheets } from '$lib/workshop/nesting/nestBound.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { problemOf } from '$lib/workshop/nesting/nestProblem.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';
import { runs } from '../runs.ts';

const folder = new URL('../fixtures/nesting/', import.meta.url);
const problem = v.object({
  name: v.string(),
  bin: v.tuple([v.number(), v.number()]),
  optimal_bins: v.number(),
  items: v.array(v.array(v.tuple([v.number(), v.number()]))),
  optimal_layout: v.array(v.array(v.array(v.tuple([v.number(), v.number()])))),
});
/** Every problem whose optimum is known, which is every class but TG. */
const problems = readdirSync(folder)
  .filter((file) => file.endsWith('.json') && !file.startsWith('TG'))
  .map((file) => v.parse(problem, JSON.parse(readFileSync(new URL(file, folder), 'utf8'))));
/** A few of all kinds: to move every piece of every problem takes a minute. */
const moving = ['TA001', 'TB001', 'TF001', 'TH002', 'TK001', 'TN001', 'TQ002'];

/** The published layout as parts and sheets: every piece a part of its own, moved to the lower left and placed back. */
function published({ bin, optimal_layout }: v.InferOutput<typeof problem>): { parts: Part[]; sheets: Sheet[] } {
  const parts: Part[] = [];
  const sheets = optimal_layout.map((pieces, sheet): Sheet => {
    const placements = pieces.map((corners, i) => {
      const { left, bottom } = around(corners);
      const name = `${sheet}-${i}`;
      parts.push(partOf(name, polygonPath(corners.map(([x, y]) => [x - left, y - bottom] as const))));
      return { part: name, x: left, y: bottom, turn: 0 };
    });
    return { stock: 'board', number: sheet + 1, width: bin[0], height: bin[1], placements, fill: 1 };
  });
  return { parts, sheets };
}

const nudged = (sheets: readonly Sheet[], which: number, dx: number, dy: number): Sheet[] => {
  let seen = 0;
  return sheets.map((sheet) => ({
    ...sheet,
    placements: sheet.placements.map((placement) =>
      seen++ === which ? { ...placement, x: placement.x + dx, y: placement.y + dy } : placement,
    ),
  }));
};

/** Data: CC0-1.0, github.com/ESICUP/datasets, commit 5fba5c4; see the SOURCE file beside it. */
describe('published optimal layouts', () => {
  it.each(problems)('$name is valid, piece touching piece', (data) => {
    const { parts, sheets } = published(data);
    expect(sheets).toHaveLength(data.optimal_bins);
    expect(layoutFaults(sheets, parts, 0, 0)).toEqual([]);
  });

  it.each(problems.filter(({ name }) => moving.includes(name)))(
    '$name is not valid with any one piece moved by 0.5 mm',
    (data) => {
      const { parts, sheets } = published(data);
      parts.forEach((_, i) => {
        expect(layoutFaults(nudged(sheets, i, 0.5, 0), parts, 0, 0)).not.toEqual([]);
        expect(layoutFaults(nudged(sheets, i, 0, -0.5), parts, 0, 0)).not.toEqual([]);
      });
    },
  );
});

describe('the bound', () => {
  it.each(problems)('of $name is never over the optimum', ({ bin, items, optimal_bins }) => {
    const parts = items.map((corners, i) => {
      const { left, bottom } = around(corners);
      return partOf(`${i}`, polygonPath(corners.map(([x, y]) => [x - left, y - bottom] as const)));
    });
    const stock = { name: 'board', thickness: 3, sheet: { width: bin[0], height: bin[1] }, density: 750, ...asCutter };
    const made = toTheEnd(problemOf(parts, stock, 0, { kerf: 0, taper: 0, spacing: 0, margin: 0 }));
    if (!made.ok) throw new Error('expected a problem');
    // A hair is kept between parts, so exact fits may count for one sheet more.
    expect(leastSheets(made.value)).toBeLessThanOrEqual(optimal_bins + 1);
    const area = parts.reduce((sum, { outside }) => sum + signedArea(outside), 0);
    expect(leastSheets(made.value)).toBeGreaterThanOrEqual(Math.ceil(area / (bin[0] * bin[1]) - 1e-9));
  });
});

describe('arranged sheets, judged by clipper2', () => {
  const area = (paths: { x: number; y: number }[][]): number => Math.abs(areaPathsD(paths));

  it('no two parts grown by half the spacing overlap, and all lie inside the margin', () => {
    const anyParts = fc.array(fc.record({ wedge: anyWedge, quantity: fc.integer({ min: 1, max: 25 }) }), {
      minLength: 1,
      maxLength: 3,
    });
    fc.assert(
      fc.property(anyParts, fc.integer({ min: 5, max: 60 }), fc.boolean(), (several, tenths, quarterTurns) => {
        const spacing = tenths / 10;
        const parts = several.map(({ wedge, quantity }, i) => ({ ...wedge, name: `slice ${i}`, quantity }));
        const stock = { name: 'board', thickness: 3, sheet: { width: 420, height: 310 }, density: 750, ...asCutter };
        const cutter = { kerf: 0.2, taper: 0, spacing, margin: 4 };
        const result = arrange(parts, [stock], cutter, { quarterTurns });
        if (!result.ok) throw new Error(result.faults.map(faultLine).join());
        for (const sheet of result.value) {
          const outlines = sheet.placements.map((placement) => {
            const part = parts.find(({ name }) => name === placement.part);
            if (part === undefined) throw new Error('expected a part');
            return cornersOf(placedContour(part.outside, placement));
          });
          const all = outlines.flat();
          expect(Math.min(...all.map(({ x }) => x), ...all.map(({ y }) => y))).toBeGreaterThan(4 - 1e-6);
          expect(Math.max(...all.map(({ x }) => x))).toBeLessThan(416 + 1e-6);
          expect(Math.max(...all.map(({ y }) => y))).toBeLessThan(306 + 1e-6);
          const grown = outlines.map((outline) =>
            inflatePathsD([outline], spacing / 2, JoinType.Round, EndType.Polygon, 2, 4),
          );
          grown.forEach((first, i) => {
            grown.slice(i + 1).forEach((second) => {
              expect(area(intersectD(first, second, FillRule.NonZero, 4))).toBeLessThan(1e-3);
            });
          });
        }
        const counts = parts.map(({ name }) =>
          result.value.flatMap((s) => s.placements).filter((p) => p.part === name),
        );
        expect(counts.map(({ length }) => length)).toEqual(parts.map(({ quantity }) => quantity));
      }),
      { numRuns: runs(25) },
    );
  });
});
