import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bodyGap } from '$lib/geometry/bodyGap.ts';
import { add, cross, distance, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { sixSided, uprightBox } from '$lib/geometry/solid.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

interface Box {
  readonly centre: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly half: readonly [number, number, number];
}

const anyBox: fc.Arbitrary<Box> = fc
  .tuple(
    ...[0, 1, 2].map(() => numberFrom(-300, 300)),
    ...[0, 1, 2].map(() => numberFrom(5, 120)),
    ...[0, 1].map(() => numberFrom(-3, 3)),
  )
  .map(([x = 0, y = 0, z = 0, a = 1, b = 1, c = 1, turn = 0, tilt = 0]) => {
    const right = vec3(Math.cos(turn), Math.sin(turn), 0);
    const back = vec3(-Math.sin(turn) * Math.cos(tilt), Math.cos(turn) * Math.cos(tilt), Math.sin(tilt));
    return { centre: vec3(x, y, z), axes: [right, back, cross(right, back)], half: [a, b, c] };
  });

const bodyOf = ({ centre, axes, half }: Box) =>
  sixSided(
    [-1, 1].flatMap((up) =>
      [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ].map(([right = 0, back = 0]) =>
        [right, back, up].reduce((at, sign, i) => add(at, scale(axes[i] ?? centre, sign * (half[i] ?? 0))), centre),
      ),
    ),
  );

/** The point of a box nearest to another point: held to its sides along its own axes. */
const nearest = ({ centre, axes, half }: Box, point: Vec3): Vec3 =>
  axes.reduce((at, axis, i) => {
    const reach = half[i] ?? 0;
    return add(at, scale(axis, Math.min(reach, Math.max(-reach, dot(subtract(point, centre), axis)))));
  }, centre);

test('is what going to and fro between the nearest points of two boxes comes to (alternating projections, von Neumann)', () => {
  let apart = 0;
  fc.assert(
    fc.property(anyBox, anyBox, (a, b) => {
      let at = a.centre;
      for (let round = 0; round < 4000; round++) at = nearest(a, nearest(b, at));
      const found = distance(at, nearest(b, at));
      const gap = bodyGap(bodyOf(a), bodyOf(b));
      // Every pair of points is an upper bound of the gap; nearly parallel sides come together slowly.
      expect(gap).toBeLessThanOrEqual(found + 1e-6);
      expect(gap).toBeGreaterThan(found - 0.05);
      for (const most of [10, 200]) expect(bodyGap(bodyOf(a), bodyOf(b), most)).toBe(gap > most ? Infinity : gap);
      if (found > 1) apart += 1;
    }),
    { numRuns: runs(300) },
  );
  expect(apart).toBeGreaterThan(runs(300) / 3);
});

test('of upright boxes is the root of the squares of the gaps along the axes', () => {
  fc.assert(
    fc.property(numberFrom(-50, 50), numberFrom(-50, 50), numberFrom(-50, 50), (x, y, z) => {
      const [a, b] = [uprightBox(vec3(0, 0, 0), vec3(20, 20, 20)), uprightBox(vec3(x, y, z), vec3(10, 10, 10))];
      const along = (at: number): number => Math.max(0, at - 20, -at - 10);
      expect(bodyGap(a, b)).toBeCloseTo(Math.hypot(along(x), along(y), along(z)), 9);
      expect(bodyGap(b, a)).toBeCloseTo(bodyGap(a, b), 9);
    }),
  );
});
