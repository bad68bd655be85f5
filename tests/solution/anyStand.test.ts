import { inRows } from '../inRows.ts';
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkProject, parseProject } from '$lib/project/parse.ts';
import { faultLine, type Fault } from '$lib/project/fault.ts';
import { allFiles } from '$lib/files/allFiles.ts';
import { plan } from '$lib/solution/plan.ts';
import { solve } from '$lib/solution/solve.ts';
import { seeded } from '../../bench/measure.ts';
import { notFinite } from '../notFinite.ts';
import { numberFrom } from '../numbers.ts';
import { demoWith } from '../projects.ts';
import { randomProject } from '../randomProject.ts';
import { runs } from '../runs.ts';

/** As often none, so that not every stand has everything at once. */
const or = <T>(some: fc.Arbitrary<T>) => fc.option(some, { nil: null, freq: 2 });

/** Any stand within its ranges, with any details: most have an answer, the others a reason. */
const anyStand = fc.record({
  build: fc.constantFrom('stacked', 'skinned', 'ribbed', 'solid'),
  base: fc.constantFrom('turned', 'square-to-desk'),
  lift: numberFrom(8, 120),
  ends: fc.constantFrom('plumb', 'square'),
  frontMargin: fc.constantFrom(0, 5, 40),
  rearMargin: fc.constantFrom(0, 5, 40),
  stop: or(fc.record({ height: numberFrom(2, 30), thickness: numberFrom(2, 20) })),
  cable: or(fc.record({ width: numberFrom(2, 30), depth: numberFrom(1, 15), fromRear: numberFrom(0, 180) })),
  recess: or(fc.record({ face: fc.constantFrom('top', 'base'), depth: numberFrom(0.5, 4), border: numberFrom(0, 30) })),
  corner: or(numberFrom(0.5, 20)),
  relief: or(fc.record({ web: numberFrom(3, 20) })),
  veneer: fc.constantFrom(0, 0.6, 3),
  pad: fc.constantFrom(0, 2),
  feet: fc.constantFrom(0, 4),
});

/** Faults that name what to change: not the ones that only say that a build failed, or drew what cannot be cut. */
function expectReasons(faults: readonly Fault[]): void {
  expect(faults.length).toBeGreaterThan(0);
  for (const fault of faults) expect(faultLine(fault)).not.toMatch(/mistake of the program|leave it out$/);
}

it('any project at all has a plan or a reason, and what has a plan has suggestions and files', async () => {
  const seen = { planned: 0, refused: 0 };
  const anyProject = fc.integer({ min: 0, max: 2 ** 32 - 1 }).map((seed) => randomProject(seeded(seed)));
  await fc.assert(
    fc.asyncProperty(anyProject, async (document) => {
      const read = checkProject(document);
      const layout = read.ok ? read.value.layouts[0] : undefined;
      if (!read.ok || !layout) return;
      const planned = solve(read.value, layout);
      if (!planned.ok) {
        seen.refused++;
        expectReasons(planned.faults);
        return;
      }
      seen.planned++;
      const { value } = planned;
      expect(value.findings).toEqual(expect.arrayContaining([...value.checks]));
      // Suggestions plan dozens of other stands; files take as long: each for some.
      if (seen.planned % 100 === 1) {
        expect([...value.suggestions.keys()].every((code) => value.findings.some((one) => one.code === code))).toBe(
          true,
        );
      }
      if (seen.planned % 50 === 1) {
        const laid = inRows(planned.value);
        const made = laid.ok ? await allFiles(planned.value, laid.value) : laid;
        if (!made.ok) expectReasons(made.faults);
      }
    }),
    { numRuns: runs(4000) },
  );
  expect(seen.planned).toBeGreaterThan(runs(4000) / 4);
});

it('any stand at any seat has a plan without a number that is none, or a reason; nothing is thrown', () => {
  const seen = { planned: 0, refused: 0 };
  fc.assert(
    fc.property(anyStand, numberFrom(950, 1500), numberFrom(0, 500), (stand, earHeight, setback) => {
      const read = checkProject(demoWith({ '/layouts/0/stand': stand, '/layouts/0/listener': { earHeight, setback } }));
      const layout = read.ok ? read.value.layouts[0] : undefined;
      if (!read.ok || !layout) {
        seen.refused++;
        return;
      }
      const planned = plan(read.value, layout);
      if (planned.ok) {
        seen.planned++;
        expect(notFinite(planned.value)).toEqual([]);
      } else {
        seen.refused++;
        expectReasons(planned.faults);
      }
    }),
    { numRuns: runs(2000) },
  );
  expect(seen.planned).toBeGreaterThan(runs(2000) / 10);
});

it('projects that once had no plan for no good reason have one', () => {
  const folder = new URL('../fixtures/projects/', import.meta.url);
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
    const read = parseProject(readFileSync(new URL(file, folder), 'utf8'));
    const layout = read.ok ? read.value.layouts[0] : undefined;
    if (!read.ok || !layout) throw new Error(`${file} is not sound`);
    const planned = solve(read.value, layout);
    expect([file, planned.ok ? [] : planned.faults]).toEqual([file, []]);
  }
});
