import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { centroidOf } from '$lib/stand/centroid.ts';
import { anyCase, isInside, soundProfile } from './stands.ts';
import { numberFrom } from '../numbers.ts';

/** Middle of all the points of a fine grid that lie in the shape. */
function gridMiddle(points: readonly Point[], holes: readonly { u: number; z: number; diameter: number }[]): Point {
  const [us, zs] = [points.map(([u]) => u), points.map(([, z]) => z)];
  const [left, low] = [Math.min(...us), Math.min(...zs)];
  const [across, up] = [Math.max(...us) - left, Math.max(...zs) - low];
  const steps = 300;
  let [count, u, z] = [0, 0, 0];
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < steps; j++) {
      const at: Point = [left + ((i + 0.5) * across) / steps, low + ((j + 0.5) * up) / steps];
      const bored = holes.some((hole) => Math.hypot(at[0] - hole.u, at[1] - hole.z) < hole.diameter / 2);
      if (bored || !isInside(points, at)) continue;
      count++;
      u += at[0];
      z += at[1];
    }
  }
  return [u / count, z / count];
}

describe('the middle of a profile', () => {
  test('of a wedge is where the formula of a trapezium puts it', () => {
    fc.assert(
      fc.property(numberFrom(1, 300), numberFrom(1, 300), numberFrom(20, 600), (front, rear, run) => {
        const [u, z] = centroidOf(
          [
            [0, 0],
            [run, 0],
            [run, rear],
            [0, front],
          ],
          [],
        );
        expect(u).toBeCloseTo((run * (front + 2 * rear)) / (3 * (front + rear)), 9);
        expect(z).toBeCloseTo((front ** 2 + front * rear + rear ** 2) / (3 * (front + rear)), 9);
      }),
    );
  });

  test('of a wedge with a stop and rod holes is where counting points puts it', () => {
    const lipped: Point[] = [
      [0, 0],
      [210, 0],
      [210, 34],
      [204, 34],
      [204, 22],
      [0, 60],
    ];
    const holes = [
      { u: 30, z: 26, diameter: 16 },
      { u: 170, z: 13, diameter: 12 },
    ];
    const [u, z] = centroidOf(lipped, holes);
    const [countedU, countedZ] = gridMiddle(lipped, holes);
    // The grid's cells are 0.7 by 0.2 mm; their errors at the rim all but cancel.
    expect(Math.abs(u - countedU)).toBeLessThan(0.1);
    expect(Math.abs(z - countedZ)).toBeLessThan(0.05);
  });

  test('moves with the profile, however far', () => {
    fc.assert(
      fc.property(anyCase, numberFrom(-1e5, 1e5), numberFrom(-1e5, 1e5), (one, right, up) => {
        const { slice } = soundProfile(one);
        const [u, z] = centroidOf(slice, []);
        const moved = centroidOf(
          slice.map(([a, b]): Point => [a + right, b + up]),
          [],
        );
        // Rounding of coordinates of 1e5 mm, 1.5e-11, over profiles as thin as half a millimetre.
        expect(Math.abs(moved[0] - u - right)).toBeLessThan(1e-6);
        expect(Math.abs(moved[1] - z - up)).toBeLessThan(1e-6);
      }),
    );
  });
});
