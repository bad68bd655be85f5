import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { missSpread } from '$lib/layout/missSpread.ts';
import { nudges, type Scene } from '$lib/layout/nudges.ts';
import { placeSide } from '$lib/layout/place.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Project } from '$lib/project/project.ts';
import { byTape, type SureKey } from '$lib/project/sure.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const spread = (of: Project): number => {
  const found = missSpread(of.speaker, firstLayout(of), 'right', of.sure);
  if (found === null) throw new Error('the demo has an answer');
  return found;
};

/** Everything exact but for some values. */
const onlySure = (some: Partial<Record<SureKey, number>>) => ({
  '/sure': { ...Object.fromEntries(Object.keys(byTape).map((one) => [one, 0])), ...some },
});

describe('how far an axis may pass the head', () => {
  test('is nothing when every value is exact', () => {
    expect(spread(project(onlySure({})))).toBe(0);
  });

  test('by an ear that is higher is that height seen square to the axis', () => {
    // The axis stays; a head moved straight up by h leaves it by h · cos of its elevation.
    const of = project(onlySure({ earHeight: 10 }));
    const pose = placeSide(of.speaker, firstLayout(of), 'right');
    if (!pose.ok) throw new Error('the demo has an answer');
    expect(spread(of)).toBeCloseTo(10 * Math.cos(pose.value.elevation), 9);
  });

  test('is the same for a desk that is lower', () => {
    expect(spread(project(onlySure({ deskHeight: 10 })))).toBeCloseTo(spread(project(onlySure({ earHeight: 10 }))), 9);
  });

  test('has a part where the toe is set by hand, and does not follow the head', () => {
    const straight = { '/layouts/0/aim/toe': { rule: 'straight' } };
    expect(spread(project({ ...straight, ...onlySure({ headOffset: 10 }) }))).toBeCloseTo(10, 9);
  });

  test('is none of the cabinet’s depth', () => {
    expect(spread(project(onlySure({ speakerDepth: 10 })))).toBe(0);
  });

  test('never shrinks when a value is less sure', () => {
    fc.assert(
      fc.property(anyDesk, fc.constantFrom('earHeight', 'setback', 'markX', 'driverHeight'), (changes, key) => {
        const at = (by: number): number | null => {
          const of = project({ ...changes, '/sure': { [key]: by } });
          return missSpread(of.speaker, firstLayout(of), 'right', of.sure);
        };
        const [less, more] = [at(1), at(4)];
        fc.pre(less !== null && more !== null);
        expect(more).toBeGreaterThanOrEqual(less);
      }),
      { numRuns: runs(100) },
    );
  });

  test('holds nine scenes in ten, each value drawn evenly from its span', () => {
    const of = project();
    const layout = firstLayout(of);
    const planned = placeSide(of.speaker, layout, 'right');
    if (!planned.ok) throw new Error('the demo has an answer');
    const { toe, tilt } = planned.value;
    const aim = {
      ...layout.aim,
      toe: { rule: 'as-set', degrees: degrees(toe) },
      tilt: { rule: 'as-set', degrees: degrees(tilt) },
    } as const;
    // A linear congruential generator, Numerical Recipes' constants, from memory: the same every time.
    let state = 20260501;
    const random = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    const TRIALS = 4000;
    const band = spread(of);
    let within = 0;
    for (let trial = 0; trial < TRIALS; trial++) {
      const scene = nudges.reduce<Scene>(
        (at, [key, nudge]) => (key === 'speakerDepth' ? at : nudge(at, (2 * random() - 1) * of.sure[key])),
        { speaker: of.speaker, layout: { ...layout, aim } },
      );
      const pose = placeSide(scene.speaker, scene.layout, 'right');
      if (!pose.ok) throw new Error('every scene within the spans has an answer');
      if (pose.value.miss <= band) within += 1;
    }
    // Three standard deviations of the count under 90 %; and the band is not so wide that it says nothing.
    expect(within).toBeGreaterThan(0.9 * TRIALS - 3 * Math.sqrt(TRIALS * 0.09));
    expect(band).toBeLessThan(40);
  });
});
