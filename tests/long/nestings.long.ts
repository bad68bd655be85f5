import { readFileSync, readdirSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { around } from '$lib/geometry/extent.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import type { Stock } from '$lib/project/project.ts';
import { nest } from '$lib/workshop/nesting/nest.ts';
import type { Part } from '$lib/workshop/part.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { faultLine } from '$lib/project/fault.ts';
import { seeded } from '../../bench/measure.ts';
import { asCutter, partOf, wedge } from '../workshop/shapes.ts';

/** Problems of convex pieces: see `SOURCE.md` beside them. */
const folder = new URL('../fixtures/nesting/', import.meta.url);
const problem = v.object({
  name: v.string(),
  bin: v.tuple([v.number(), v.number()]),
  items: v.array(v.array(v.tuple([v.number(), v.number()]))),
});
const published = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => v.parse(problem, JSON.parse(readFileSync(new URL(file, folder), 'utf8'))))
  .map(({ name, bin: [width, height], items }) => ({
    name,
    sheet: { width, height },
    parts: items.map((corners, i) => {
      const { left, bottom } = around(corners);
      return partOf(`${i}`, polygonPath(corners.map(([x, y]) => [x - left, y - bottom] as const)));
    }),
  }));

/** Of this many in all, those that are not published are wedges of a stand. */
const NESTINGS = 82;
/** The seed of the wedges. */
const SEED = 7;
const random = seeded(SEED);
const between = (from: number, to: number): number => from + (to - from) * random();
const stands = Array.from({ length: NESTINGS - published.length }, (_, i) => ({
  name: `stand ${i} of seed ${SEED}`,
  sheet: { width: between(400, 1250), height: between(280, 650) },
  parts: Array.from({ length: Math.ceil(between(0, 3)) }, (_unused, at) => {
    const slice = wedge(between(80, 260), between(4, 25), between(30, 70));
    return { ...slice, name: `slice ${at}`, quantity: Math.ceil(between(3, 70)) };
  }),
}));

/** Pairs of pieces looked at: some seconds. */
const BUDGET = 6_000_000;
const copiesOf = (parts: readonly Part[]): number => parts.reduce((sum, { quantity }) => sum + quantity, 0);

describe(`${NESTINGS} nestings`, () => {
  it.each([...published, ...stands])('$name: every answer can be cut, holds every copy and takes no more', (one) => {
    const stock: Stock = { name: 'board', thickness: 3, sheet: one.sheet, density: 750, ...asCutter };
    const spaces = { kerf: 0, taper: 0, spacing: 1, margin: 0 };
    let before = Infinity;
    let last = 0;
    const steps = nest(one.parts, [stock], spaces, { budget: BUDGET });
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) {
        if (!step.value.ok) throw new Error(step.value.faults.map(faultLine).join('; '));
        break;
      }
      if (step.value.kind === 'progress') {
        expect(step.value.share).toBeGreaterThanOrEqual(last);
        last = step.value.share;
        continue;
      }
      const { sheets } = step.value.nested;
      expect(layoutFaults(sheets, one.parts, spaces.spacing, spaces.margin)).toEqual([]);
      expect(sheets.reduce((sum, { placements }) => sum + placements.length, 0)).toBe(copiesOf(one.parts));
      expect(sheets.length).toBeLessThanOrEqual(before);
      before = sheets.length;
    }
    expect(before).toBeLessThan(Infinity);
  });
});
