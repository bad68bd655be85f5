import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { plan } from '$lib/plan/plan.ts';
import { numberFrom } from '../numbers.ts';
import { demoWith } from '../projects.ts';
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
        expect(
          JSON.stringify(planned.value, (_, value: unknown) => (Number.isNaN(value) ? 'no number' : value)),
        ).not.toContain('no number');
      } else {
        seen.refused++;
        expect(planned.faults.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: runs(2000) },
  );
  expect(seen.planned).toBeGreaterThan(runs(2000) / 10);
});
