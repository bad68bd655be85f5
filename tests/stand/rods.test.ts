import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Rods } from '$lib/project/project.ts';
import { rodRow } from '$lib/stand/rods.ts';
import { faultLine } from '$lib/project/fault.ts';
import {
  anyCase,
  depthInConvex,
  isInside,
  mm,
  mustBuild,
  orZero,
  plain,
  sampledDistance,
  soundProfile,
} from './stands.ts';
import { plainText } from '$lib/project/sentence.ts';
import { runs } from '../runs.ts';

const rods: Rods = { diameter: 6, count: 2, clearance: 0.1, edge: 2 };

const anyRods: fc.Arbitrary<Rods> = fc.record({
  diameter: mm(1, 20),
  count: fc.integer({ min: 2, max: 8 }),
  clearance: orZero(mm(0, 1)),
  edge: mm(0.5, 10),
});

const rowOf = (wanted: Rods, profile: Parameters<typeof rodRow>[1]) => {
  const outcome = rodRow(wanted, profile);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  return outcome.value;
};

const messageOf = (wanted: Rods, profile: Parameters<typeof rodRow>[1]): string => {
  const outcome = rodRow(wanted, profile);
  expect(outcome).toMatchObject({ ok: false, kind: 'no-answer', faults: [{ pointer: '/stand/rods' }] });
  return outcome.ok ? '' : outcome.faults.map(({ message }) => plainText(message)).join();
};

describe('a row of rods', () => {
  it('lies on the middle of a generous profile, far apart, with a hole’s width of wood round it', () => {
    const tilt = radians(10);
    const profile = mustBuild(plain, 205, tilt, 12);
    const { holes, edge } = rowOf(rods, profile);
    expect(holes).toHaveLength(2);
    const run = 205 * Math.cos(tilt);
    for (const { u, z, diameter } of holes) {
      expect(diameter).toBe(6.1);
      // As high over the base as it is, square to it, under the slope.
      const height = 12 + (run - u) * Math.tan(tilt);
      expect(z).toBeCloseTo((height - z) * Math.cos(tilt), 9);
    }
    expect(holes[0]?.u).toBeCloseTo(6.1 * 1.5, 6);
    // Where base and slope are 3/2 holes away: height = 3/2 hole · (1 + 1/cos tilt).
    const needed = 6.1 * 1.5 * (1 + 1 / Math.cos(tilt));
    expect(holes[1]?.u).toBeCloseTo(run - (needed - 12) / Math.tan(tilt), 6);
    expect(edge).toBeCloseTo(6.1, 6);
  });

  it('keeps three quarters of the widest spread where that wood is not to be had', () => {
    const tilt = radians(2);
    const { holes, edge } = rowOf(rods, mustBuild(plain, 205, tilt, 12));
    const run = 205 * Math.cos(tilt);
    const widest = run - 2 * (6.1 / 2 + 2);
    expect((holes[1]?.u ?? NaN) - (holes[0]?.u ?? NaN)).toBeGreaterThan(0.74 * widest);
    expect(edge).toBeGreaterThan(2);
    expect(edge).toBeLessThan(6.1);
  });

  it('fits a slab that is exactly high enough', () => {
    const { holes, edge } = rowOf(rods, mustBuild(plain, 205, 0, 6.1 + 2 * 2));
    expect(holes.map(({ z }) => z)).toEqual([expect.closeTo(5.05, 8), expect.closeTo(5.05, 8)]);
    expect(holes[0]?.u).toBeCloseTo(5.05, 8);
    expect(holes[1]?.u).toBeCloseTo(205 - 5.05, 8);
    expect(edge).toBeCloseTo(2, 8);
  });

  it('leaves its wood everywhere and a hole’s width between rims, also beside a stop', () => {
    let placed = 0;
    fc.assert(
      fc.property(anyCase, anyRods, (one, wanted) => {
        const profile = soundProfile(one);
        const outcome = rodRow(wanted, profile);
        fc.pre(outcome.ok);
        placed++;
        const { holes, edge } = outcome.value;
        expect(holes).toHaveLength(wanted.count);
        const sampled = holes.map(({ u, z, diameter }) => {
          expect(isInside(profile.slice, [u, z])).toBe(true);
          expect(diameter).toBe(wanted.diameter + wanted.clearance);
          return sampledDistance(profile.slice, [u, z]) - diameter / 2;
        });
        // The solver's own slack.
        expect(Math.min(...sampled)).toBeGreaterThan(wanted.edge - 2e-9);
        // The samples lie at most some mm apart and so over-state the distance a little.
        expect(edge).toBeLessThanOrEqual(Math.min(...sampled) + 1e-9);
        expect(edge).toBeGreaterThan(wanted.edge - 2e-9);
        holes.forEach((hole, i) =>
          holes.slice(i + 1).forEach((other) => {
            const gap = Math.hypot(hole.u - other.u, hole.z - other.z) - hole.diameter;
            expect(gap).toBeGreaterThan(hole.diameter - 2e-9);
          }),
        );
      }),
      { numRuns: runs(200) },
    );
    expect(placed).toBeGreaterThanOrEqual(runs(200));
  });

  it('finds room wherever a search over a grid of places finds it', () => {
    let searched = 0;
    fc.assert(
      fc.property(anyCase, anyRods, (one, wanted) => {
        const profile = soundProfile({ ...one, settings: { ...one.settings, stop: null } });
        const pair = { ...wanted, count: 2 };
        fc.pre(!rodRow(pair, profile).ok);
        const hole = pair.diameter + pair.clearance;
        const us = profile.slice.map(([u]) => u);
        const zs = profile.slice.map(([, z]) => z);
        const [left, right, low, high] = [Math.min(...us), Math.max(...us), Math.min(...zs), Math.max(...zs)];
        // A row runs from front to rear, so what counts is how far apart places are between the two parallel ends.
        const lean = one.settings.ends === 'square' ? one.tilt : 0;
        const places: number[] = [];
        for (let i = 1; i < 40; i++) {
          for (let j = 1; j < 40; j++) {
            const place: Point = [left + ((right - left) * i) / 40, low + ((high - low) * j) / 40];
            if (depthInConvex(profile.slice, place) < hole / 2 + pair.edge) continue;
            places.push(place[0] * Math.cos(lean) - place[1] * Math.sin(lean));
          }
        }
        expect(places.length === 0 || Math.max(...places) - Math.min(...places) < 2 * hole).toBe(true);
        searched += places.length > 0 ? 1 : 0;
      }),
      { numRuns: runs(100) },
    );
    expect(searched).toBeGreaterThan(runs(100) / 4);
  });

  it('never gives a number that is none', () => {
    fc.assert(
      fc.property(anyCase, anyRods, (one, wanted) => {
        const outcome = rodRow(wanted, soundProfile(one));
        if (outcome.ok) {
          const numbers = outcome.value.holes.flatMap(({ u, z, diameter }) => [u, z, diameter]);
          expect([...numbers, outcome.value.edge].every(Number.isFinite)).toBe(true);
        } else {
          expect(outcome.faults.map(faultLine).join()).not.toMatch(/NaN|Infinity|undefined|-\d/);
        }
      }),
    );
  });
});

describe('rods that do not fit', () => {
  it('name the thickest rod and the lift that would do', () => {
    // A slab of 10: 10 − 2·2 − 0.1 = 5.9 mm of rod; 6 mm wants 10.1.
    expect(messageOf(rods, mustBuild(plain, 205, 0, 10))).toBe(
      'expected room for 2 rods of 6 mm with 2 mm of wood round each hole and a hole’s width between them, ' +
        'got a profile too small for them: it would take rods of at most 5.9 mm or 0.1 mm more lift',
    );
  });

  it('do not promise that lift cures a short stand', () => {
    // Along 30 mm with 2 mm at both ends: two holes and the wood between them are three holes, so 26/3 − 0.1 mm of rod.
    const message = messageOf({ ...rods, diameter: 10 }, mustBuild(plain, 30, 0, 60));
    expect(message).toContain('at most 8.5 mm');
    expect(message).not.toContain('lift');
  });

  it('say so when neither helps', () => {
    expect(messageOf({ ...rods, edge: 200 }, mustBuild(plain, 205, 0, 60))).toContain(
      'use fewer rods or leave less wood',
    );
  });

  it('fit when the advice is followed, and hardly before', () => {
    fc.assert(
      fc.property(anyCase, anyRods, (one, wanted) => {
        const profile = soundProfile(one);
        const outcome = rodRow(wanted, profile);
        fc.pre(!outcome.ok);
        const message = outcome.faults.map(faultLine).join();
        const thinner = /at most ([\d.]+) mm/.exec(message)?.[1];
        if (thinner !== undefined) {
          expect(rodRow({ ...wanted, diameter: Number(thinner) }, profile).ok).toBe(true);
          expect(rodRow({ ...wanted, diameter: Number(thinner) + 0.11 }, profile).ok).toBe(false);
        }
        const lift = /([\d.]+) mm more lift/.exec(message)?.[1];
        if (lift !== undefined) {
          const raised = (more: number) => mustBuild(one.settings, one.depth, one.tilt, one.lift + more);
          expect(rodRow(wanted, raised(Number(lift))).ok).toBe(true);
          expect(rodRow(wanted, raised(Math.max(0, Number(lift) - 0.11))).ok).toBe(false);
        }
      }),
      { numRuns: runs(200) },
    );
  });
});
