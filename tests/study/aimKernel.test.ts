import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames } from '$lib/project/project.ts';
import { aimKernel, aimPair } from '$lib/study/aimKernel.ts';
import { anyDesk, demoWith, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const pointers = ['/listener/setback', '/listener/earHeight', '/listener/offset', '/placement/right/x', '/stand/lift', '/placement/left/x']; // prettier-ignore

const tilts = fc.oneof(
  fc.constant({ rule: 'tilt-to-ear' }),
  fc.double({ min: -20, max: 30, noNaN: true }).map((degrees) => ({ rule: 'lift-to-ear', degrees })),
  fc.double({ min: -60, max: 60, noNaN: true }).map((degrees) => ({ rule: 'as-set', degrees })),
);

/** Agreement asked of the kernel: mm and degrees. */
const CLOSE = 1e-9;

test('the kernel aims as the general solver does, and has no answer where that has none', () => {
  let [aimed, none] = [0, 0];
  const free = fc.tuple(
    fc.double({ min: -300, max: 900, noNaN: true }),
    fc.double({ min: 400, max: 2000, noNaN: true }),
    fc.double({ min: -200, max: 200, noNaN: true }),
    fc.double({ min: -300, max: 900, noNaN: true }),
    fc.double({ min: 0, max: 400, noNaN: true }),
    fc.double({ min: -900, max: 300, noNaN: true }),
  );
  fc.assert(
    fc.property(
      anyDesk,
      tilts,
      fc.array(free, { minLength: 1, maxLength: 6 }),
      fc.boolean(),
      (desk, tilt, drawn, isSymmetrical) => {
        // A symmetrical pair is aimed by one of its sides, if its cabinets are a pair too.
        const changes = isSymmetrical
          ? { ...desk, '/layouts/0/placement/left/y': desk['/layouts/0/placement/right/y'] }
          : desk;
        const all = isSymmetrical ? drawn.map(([setback, ear, , x, lift]) => [setback, ear, 0, x, lift, -x]) : drawn;
        const of = checkProject(demoWith({ ...changes, '/layouts/0/aim/tilt': tilt }));
        if (!of.ok) return;
        const { speaker } = of.value;
        const layout = firstLayout(of.value);
        const kernel = aimKernel(speaker, layout, pointers);
        if (!kernel) throw new Error('it can set all of them');
        for (const values of all) {
          const edits = Object.fromEntries(pointers.map((pointer, i) => [`/layouts/0${pointer}`, values[i]]));
          const edited = checkProject(demoWith({ ...changes, '/layouts/0/aim/tilt': tilt, ...edits }));
          if (!edited.ok) continue;
          const [fast, general] = [kernel.aim(values), aimPair(edited.value.speaker, firstLayout(edited.value))];
          expect(fast === null).toBe(general === null);
          if (!fast || !general) {
            none += 1;
            continue;
          }
          aimed += 1;
          expect(fast.heads).toEqual(general.heads);
          for (const side of sideNames) {
            const [a, b] = [fast.sides[side], general.sides[side]];
            for (const key of ['toe', 'tilt', 'lift', 'miss', 'frontEdgeHeight', 'rearEdgeHeight'] as const)
              expect(Math.abs(a[key] - b[key])).toBeLessThan(CLOSE);
            for (const key of ['mark', 'aimedPoint', 'axis'] as const) {
              for (const axis of ['x', 'y', 'z'] as const)
                expect(Math.abs(a[key][axis] - b[key][axis])).toBeLessThan(CLOSE);
            }
          }
        }
      },
    ),
    { numRuns: runs(2000) },
  );
  expect(aimed).toBeGreaterThan(runs(2000));
  expect(none).toBeGreaterThan(0);
});

test('numbers that aim nothing are left to the general solver', () => {
  const of = project();
  expect(aimKernel(of.speaker, firstLayout(of), ['/listener/setback', '/desk/height'])).toBeNull();
  // So is an aim for several postures.
  const shared = project({ '/layouts/0/aim/over': { postures: 'all' } });
  expect(aimKernel(shared.speaker, firstLayout(shared), ['/listener/setback'])).toBeNull();
  const alone = project({ '/layouts/0/aim/over': { postures: [] } });
  expect(aimKernel(alone.speaker, firstLayout(alone), ['/listener/setback'])).not.toBeNull();
});
