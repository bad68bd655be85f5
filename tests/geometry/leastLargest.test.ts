import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastLargest, type Bend, type Rise, type Room } from '$lib/geometry/leastLargest.ts';
import type { Point } from '$lib/geometry/point.ts';
import { minimise } from '../minimise.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const ANYWHERE: Room = [
  [-Infinity, Infinity],
  [-Infinity, Infinity],
];

const around = ([x, y]: Point): Rise => ({ value: (x * x + y * y) / 2, slope: [-x, -y] });

// Worked out by hand: the middle of the longest side, of the circle through all corners, and of a right triangle's.
test.each<{ points: Point[]; middle: Point; radius: number }>([
  { points: [[0, 0], [4, 0], [0, 3]], middle: [2, 1.5], radius: 2.5 }, // prettier-ignore
  { points: [[0, 0], [4, 0], [2, 1]], middle: [2, 0], radius: 2 }, // prettier-ignore
  { points: [[0, 0], [6, 0], [3, 3 * Math.sqrt(3)]], middle: [3, Math.sqrt(3)], radius: 2 * Math.sqrt(3) }, // prettier-ignore
  { points: [[7, -2]], middle: [7, -2], radius: 0 },
])('finds the middle of the smallest circle round $points', ({ points, middle, radius }) => {
  const { step } = leastLargest(points.map(around), [1, 0, 1], ANYWHERE);
  expect(step[0]).toBeCloseTo(middle[0], 12);
  expect(step[1]).toBeCloseTo(middle[1], 12);
  expect(Math.max(...points.map(([x, y]) => Math.hypot(x - step[0], y - step[1])))).toBeCloseTo(radius, 12);
});

const rise = fc
  .tuple(numberFrom(-2, 2), numberFrom(-3, 3), numberFrom(-3, 3))
  .map(([value, x, y]): Rise => ({ value, slope: [x, y] }));
const bends = fc
  .tuple(numberFrom(0.2, 3), numberFrom(-0.9, 0.9), numberFrom(0.2, 3))
  .map(([xx, share, yy]): Bend => [xx, share * Math.sqrt(xx * yy), yy]);
const stretch = fc.oneof(
  fc.constant<Point>([-Infinity, Infinity]),
  fc.constant<Point>([0, 0]),
  fc.tuple(numberFrom(-1, 0), numberFrom(0, 1)).map(([least, most]): Point => [least, most]),
);

test('no step in the room leads lower, and the shares balance there', () => {
  let inTheOpen = 0;
  fc.assert(
    fc.property(fc.array(rise, { minLength: 1, maxLength: 7 }), bends, stretch, stretch, (rises, bend, x, y) => {
      const height = ([dx, dy]: Point): number =>
        Math.max(...rises.map(({ value, slope }) => value + slope[0] * dx + slope[1] * dy)) +
        (bend[0] * dx * dx + 2 * bend[1] * dx * dy + bend[2] * dy * dy) / 2;
      const { step, shares } = leastLargest(rises, bend, [x, y]);
      const held = (at: number, [least, most]: Point): number => Math.min(Math.max(at, least), most);
      expect(held(step[0], x)).toBe(step[0]);
      expect(held(step[1], y)).toBe(step[1]);
      const least = minimise(([dx = 0, dy = 0]) => height([held(dx, x), held(dy, y)]), [0.1, 0.1]);
      expect(height(step)).toBeLessThanOrEqual(least.fx + 1e-12);
      expect(shares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
      expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
      if (step[0] === x[0] || step[0] === x[1] || step[1] === y[0] || step[1] === y[1]) return;
      inTheOpen++;
      const pull = ([0, 1] as const).map((axis) => rises.reduce((sum, { slope }, i) => sum + (shares[i] ?? 0) * slope[axis], 0)); // prettier-ignore
      expect(pull[0]).toBeCloseTo(-bend[0] * step[0] - bend[1] * step[1], 9);
      expect(pull[1]).toBeCloseTo(-bend[1] * step[0] - bend[2] * step[1], 9);
    }),
    { numRuns: runs(400) },
  );
  expect(inTheOpen).toBeGreaterThan(runs(400) / 10);
});
