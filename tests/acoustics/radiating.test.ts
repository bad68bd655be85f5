import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beamHalfAngle, pistonRadius, pistonSize } from '$lib/acoustics/piston.ts';
import { radiatingOf } from '$lib/acoustics/radiating.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Driver } from '$lib/project/project.ts';
import { numberFrom } from '../numbers.ts';

const driver = (role: Driver['role'], diameter: number, radiating: number | null = null): Driver => ({
  name: 'one',
  role,
  diameter,
  radiating,
  height: 100,
  offset: 0,
  acousticDepth: 0,
});
const anyRole = fc.constantFrom<Driver['role']>('tweeter', 'full-range', 'midrange', 'woofer');
const rim = numberFrom(3, 1000);

describe('what a driver radiates from', () => {
  test('is what was stated, whatever its rim and role', () => {
    fc.assert(
      fc.property(anyRole, rim, numberFrom(1, 1000), (role, diameter, stated) => {
        expect(radiatingOf(driver(role, diameter, stated))).toEqual({ diameter: stated, estimated: false });
      }),
    );
  });

  test('is estimated where nobody stated it: over nothing, within the rim, and no less for a larger one', () => {
    fc.assert(
      fc.property(anyRole, rim, rim, (role, a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)].map((diameter) => radiatingOf(driver(role, diameter)));
        expect([small?.estimated, large?.estimated]).toEqual([true, true]);
        expect(small?.diameter).toBeGreaterThan(0);
        expect(small?.diameter).toBeLessThanOrEqual(Math.min(a, b));
        expect(small?.diameter).toBeLessThanOrEqual(large?.diameter ?? NaN);
        // No jump: the estimate grows by no more than the rim does.
        expect((large?.diameter ?? NaN) - (small?.diameter ?? NaN)).toBeLessThanOrEqual(Math.abs(a - b) + 1e-9);
      }),
    );
  });

  test('of a bare dome is the dome, of one in a flange the common 25 mm', () => {
    expect([19, 25, 60, 104].map((diameter) => radiatingOf(driver('tweeter', diameter)).diameter)).toEqual([
      19, 25, 25, 25,
    ]);
  });

  // A handbook's chapter on loudspeakers: the advertised diameter is 25 to 50 mm more than the effective one.
  test.each([116, 130, 165, 180, 200, 220])('of a cone in a rim of %d mm is 25 to 50 mm less', (diameter) => {
    const less = diameter - radiatingOf(driver('woofer', diameter)).diameter;
    expect(less).toBeGreaterThanOrEqual(25);
    expect(less).toBeLessThanOrEqual(50);
  });
});

// −3 dB of a circular piston at x = ka·sin θ = 1.6137411964 (computed with scipy.special.j1); c = 343.2 m/s.
test.each([
  ['a dome of 25 mm in a flange of 104 mm', driver('tweeter', 104), 12.5, 44.84],
  ['a flange of 104 mm taken for the dome', driver('tweeter', 104, 104), 52, 9.76],
] as const)('%s is 3 dB down at 10 kHz', (_, of, radius, angle) => {
  expect(pistonRadius(of)).toBe(radius);
  const half = beamHalfAngle(pistonSize(pistonRadius(of), 10_000, 343.2), 3);
  expect(half).toBeCloseTo(Math.asin((1.6137411964 * 343.2) / (2 * Math.PI * 10 * radius)), 9);
  expect(degrees(half ?? NaN)).toBeCloseTo(angle, 1);
});
