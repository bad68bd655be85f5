import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { missSpread } from '$lib/layout/missSpread.ts';
import type { Project } from '$lib/project/project.ts';
import { byTape, type SureKey } from '$lib/project/sure.ts';
import { howSure, type SurePlan } from '$lib/solution/howSure.ts';
import { plan } from '$lib/solution/plan.ts';
import type { Plan } from '$lib/solution/document.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

function planned(of: Project): Plan {
  const outcome = plan(of, firstLayout(of));
  if (!outcome.ok) throw new Error('expected an answer');
  return outcome.value;
}

function sureOf(of: Project): SurePlan {
  const found = howSure(of, firstLayout(of), planned(of));
  if (!found) throw new Error('expected an answer');
  return found;
}

const onlySure = (some: Partial<Record<SureKey, number>>) => ({
  '/sure': { ...Object.fromEntries(Object.keys(byTape).map((one) => [one, 0])), ...some },
});

/** The demo with its stands cut: the aim no longer follows what is measured. */
const cut = (changes: Record<string, unknown>): Plan => {
  const { sides } = planned(project());
  return planned(
    project({
      '/layouts/0/aim/toe': { rule: 'as-set', degrees: sides.right.toe },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: sides.right.tilt },
      ...changes,
    }),
  );
};

describe('how sure a plan is', () => {
  test('is what its values leave open: shares add up to one, and their shifts to the spread of the miss', () => {
    let answered = 0;
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const of = project(changes);
        const outcome = plan(of, firstLayout(of));
        if (!outcome.ok) return;
        answered += 1;
        const { by, ellipse } = sureOf(of).sides.right;
        expect(by.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
        expect(by.every(({ share }, index) => share <= (by[index - 1]?.share ?? 1))).toBe(true);
        const spread = missSpread(of.speaker, firstLayout(of), 'right', of.sure) ?? NaN;
        // A card square to the planned axis sees all of a small shift, and no more than it.
        const seen = Math.hypot(...by.flatMap(({ shift }) => shift));
        expect(seen).toBeLessThanOrEqual(spread * (1 + 1e-9));
        expect(seen).toBeGreaterThan(spread * 0.98);
        expect(ellipse.major).toBeGreaterThanOrEqual(ellipse.minor);
      }),
      { numRuns: runs(100) },
    );
    expect(answered).toBeGreaterThan(runs(100) / 3);
  });

  test('an ear that may be higher stretches the ellipse upwards, and is named first', () => {
    const { by, ellipse, passes } = sureOf(project(onlySure({ earHeight: 10, markX: 1 }))).sides.right;
    expect(by[0]?.value).toBe('earHeight');
    expect(Math.abs(ellipse.turn)).toBeGreaterThan(80);
    // The head is up, so the axis passes below it.
    expect(by[0]?.shift[1]).toBeLessThan(-9);
    expect(Math.hypot(...passes)).toBeLessThan(1e-6);
  });

  test('the triangle’s part of a doubtful mark is what plans with the marks moved differ by, each mark by itself', () => {
    const angle = (side: string, x: number): number => cut({ [`/layouts/0/placement/${side}/x`]: x }).triangle.angle;
    const { placement } = firstLayout(project());
    const half = (side: 'left' | 'right'): number =>
      (angle(side, placement[side].x + 2) - angle(side, placement[side].x - 2)) / 2;
    expect(sureOf(project(onlySure({ markX: 2 }))).triangle).toBeCloseTo(Math.hypot(half('left'), half('right')), 9);
  });

  test('the crossover’s part of a doubtful ear is what plans with the ear moved differ by', () => {
    const phase = (by: number): number =>
      cut({ '/layouts/0/listener/earHeight': firstLayout(project()).listener.earHeight + by }).sides.right.crossovers[0]
        ?.phase ?? NaN;
    const { crossovers } = sureOf(project(onlySure({ earHeight: 10 }))).sides.right;
    expect(crossovers[0]?.phase).toBeCloseTo(Math.abs(phase(10) - phase(-10)) / 2, 9);
    expect(crossovers[0]?.phase).toBeGreaterThan(1);
  });
});
