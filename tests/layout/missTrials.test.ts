import { describe, expect, test } from 'vitest';
import { countWithin } from '$lib/geometry/trials.ts';
import { missTrials, differs, TRIALS, type MissTrials } from '$lib/layout/missTrials.ts';
import { placeSide } from '$lib/layout/place.ts';
import { byTape, type SureKey } from '$lib/project/sure.ts';
import type { Project } from '$lib/project/project.ts';
import { firstLayout, project } from '../projects.ts';

function tried(of: Project): MissTrials & { readonly shares: readonly number[] } {
  const steps = missTrials(of.speaker, firstLayout(of), 'right', of.sure);
  const shares: number[] = [];
  for (let step = steps.next(); ; step = steps.next()) {
    if (!step.done) shares.push(step.value);
    else if (step.value) return { ...step.value, shares };
    else throw new Error('the demo has an answer');
  }
}

const onlySure = (some: Partial<Record<SureKey, number>>) => ({
  '/sure': { ...Object.fromEntries(Object.keys(byTape).map((one) => [one, 0])), ...some },
});

describe('trials of the miss', () => {
  test('of exact values all hit', () => {
    const { misses, within95 } = tried(project(onlySure({})));
    expect(misses).toHaveLength(TRIALS);
    expect(within95).toBeLessThan(1e-9);
  });

  test('of one doubtful height lie evenly up to all of it, seen square to the axis', () => {
    // A head moved straight up by h leaves the axis by h · cos of its elevation; |h| of ± 10 with equal chance has its 95 % at 9.5.
    const of = project(onlySure({ earHeight: 10 }));
    const pose = placeSide(of.speaker, firstLayout(of), 'right');
    if (!pose.ok) throw new Error('the demo has an answer');
    const { misses, within95, shares } = tried(of);
    const seen = Math.cos(pose.value.elevation);
    expect(within95).toBeGreaterThan(9.42 * seen);
    expect(within95).toBeLessThan(9.58 * seen);
    expect(countWithin(misses, 10.0001 * seen)).toBe(TRIALS);
    // Of a fair coin thrown 10,000 times, more than 250 off half is less likely than one in a million.
    expect(Math.abs(countWithin(misses, 5 * seen) - TRIALS / 2)).toBeLessThan(250);
    expect(shares.length).toBeGreaterThan(10);
    expect(shares.every((share, index) => share > (shares[index - 1] ?? 0) && share < 1)).toBe(true);
  });

  test('agree with the first order where the doubts are a tape’s, and say so where they are wild', () => {
    expect(differs(tried(project()))).toBe(false);
    const wild = tried(project(onlySure({ baffleRake: 45 })));
    expect(differs(wild)).toBe(true);
  });

  test('are the same every time', () => {
    expect(tried(project())).toEqual(tried(project()));
  });
});
