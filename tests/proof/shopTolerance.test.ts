import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { length, subtract } from '$lib/geometry/point.ts';
import { asCut, passing } from '$lib/layout/passing.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { coarsestWithin, shopTolerance, type ShopTolerance } from '$lib/proof/shopTolerance.ts';
import { plan } from '$lib/solution/plan.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

function tolerance(of: Project): ShopTolerance {
  const outcome = plan(of, firstLayout(of));
  const found = outcome.ok ? shopTolerance(outcome.value, 'right') : null;
  if (!found) throw new Error('the demo has an answer');
  return found;
}

const error = (of: ShopTolerance, what: string) => of.errors.find((one) => one.what === what);

const onSolid = { '/layouts/0/stand/build': 'solid' };

/** The same by the other way: the scene placed anew with stands that are cut otherwise. */
function movedBy(of: Project, change: (cut: Layout) => Layout): number {
  const pose = placeSide(of.speaker, firstLayout(of), 'right');
  if (!pose.ok) throw new Error('the demo has an answer');
  const cut = asCut(firstLayout(of), pose.value);
  const [at, there] = [cut, change(cut)].map((layout) => passing({ speaker: of.speaker, layout }, 'right'));
  if (!at || !there) throw new Error('the demo has an answer');
  return length(subtract(there, at));
}

describe('what the shop does at the head', () => {
  test('of a mark off by a millimetre is what placing it there gives', () => {
    const of = project();
    const moved = (key: 'x' | 'y') =>
      movedBy(of, (cut) => ({
        ...cut,
        placement: { ...cut.placement, right: { ...cut.placement.right, [key]: cut.placement.right[key] + 1 } },
      }));
    expect(error(tolerance(of), 'mark')?.atHead).toBeCloseTo(Math.hypot(moved('x'), moved('y')), 9);
  });

  test('of half a degree at the saw is what a plan with that tilt gives, its front edge where it was', () => {
    const of = project(onSolid);
    const pose = placeSide(of.speaker, firstLayout(of), 'right');
    if (!pose.ok) throw new Error('the demo has an answer');
    const { tilt, lift } = pose.value;
    const steeper = tilt + Math.PI / 360;
    // The lift is that of the lowest edge: the front edge stays where it is when the rear one goes down.
    const sunk = lift + of.speaker.depth * (Math.sin(tilt) - Math.sin(steeper));
    const by = movedBy(of, (cut) => ({
      ...cut,
      aim: { ...cut.aim, tilt: { rule: 'as-set', degrees: (steeper * 180) / Math.PI } },
      stand: { ...cut.stand, lift: sunk },
    }));
    expect(error(tolerance(of), 'saw')?.atHead).toBeCloseTo(by, 9);
  });

  test('of thickness and glue is nothing: layers stand side by side, and only the width grows', () => {
    const found = tolerance(project());
    expect(error(found, 'thickness')).toMatchObject({ atHead: 0, wider: expect.closeTo(5.4, 9) });
    expect(error(found, 'glue')).toMatchObject({ atHead: 0, wider: expect.closeTo(5.3, 9) });
    expect(error(found, 'saw')).toBeUndefined();
    expect(error(tolerance(project(onSolid)), 'thickness')).toBeUndefined();
  });

  test('of moisture grows a block steeper, as 12° of beech by 0.21°, and leaves a stack its slope', () => {
    // Wood Handbook's beech, 4 %: tan t grows by 1.72 %; 12° become 12.20°.
    expect((Math.atan(Math.tan((12 * Math.PI) / 180) * 1.01724) * 180) / Math.PI).toBeCloseTo(12.2, 1);
    const [block, stack] = [tolerance(project(onSolid)), tolerance(project())];
    expect(error(block, 'moisture')?.atHead).toBeGreaterThan(5 * (error(stack, 'moisture')?.atHead ?? NaN));
    // A stack of fibreboard: 164.7 mm grow by 0.35 % for each of 4 %.
    expect(error(stack, 'moisture')?.wider).toBeCloseTo(164.7 * 0.014, 9);
  });

  test('is told worst first, finite, and finer classes are never worse', () => {
    let answered = 0;
    fc.assert(
      fc.property(anyDesk, fc.constantFrom('stacked', 'solid'), (changes, build) => {
        const of = project({ ...changes, '/layouts/0/stand/build': build });
        const outcome = plan(of, firstLayout(of));
        if (!outcome.ok) return;
        answered += 1;
        const { errors, classes } = tolerance(of);
        for (const [index, { atHead, wider }] of errors.entries()) {
          expect(atHead).toBeLessThanOrEqual(errors[index - 1]?.atHead ?? Infinity);
          expect(Number.isFinite(wider)).toBe(true);
        }
        for (const [index, { atHead }] of classes.entries()) {
          expect(atHead).toBeGreaterThanOrEqual(classes[index - 1]?.atHead ?? 0);
        }
      }),
      { numRuns: runs(60) },
    );
    expect(answered).toBeGreaterThan(runs(60) / 3);
  });

  test('the coarsest class that will do is the last within the zone', () => {
    const found = tolerance(project());
    expect(coarsestWithin(found, Infinity)).toBe('v');
    expect(coarsestWithin(found, 0)).toBeNull();
    const medium = found.classes.find(({ of }) => of === 'm')?.atHead ?? NaN;
    expect(coarsestWithin(found, medium)).toBe('m');
  });
});
