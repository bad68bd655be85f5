import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rootBetween } from '$lib/geometry/root.ts';
import { numberFrom } from '../numbers.ts';

test('finds the place where a line, a cubic and a steep exponential cross zero', () => {
  expect(rootBetween((x) => 2 * x - 3, 0, 10)).toBeCloseTo(1.5, 14);
  expect(rootBetween((x) => x ** 3 - 2, 0, 2)).toBeCloseTo(Math.cbrt(2), 14);
  expect(rootBetween((x) => Math.exp(x) - 1e6, -100, 100)).toBeCloseTo(Math.log(1e6), 12);
  expect(rootBetween((x) => 3 - x, 0, 10)).toBeCloseTo(3, 14);
});

test('takes an end that is a root, and has no answer without a change of sign', () => {
  expect(rootBetween((x) => x, 0, 1)).toBe(0);
  expect(rootBetween((x) => x - 1, 0, 1)).toBe(1);
  expect(rootBetween((x) => x * x + 1, -1, 1)).toBeNull();
  expect(rootBetween(() => NaN, -1, 1)).toBeNull();
});

test('stays in the bracket and leaves no more than the last digits, for any rising function', () => {
  fc.assert(
    fc.property(numberFrom(-5, 5), numberFrom(0.01, 4), numberFrom(0, 3), (at, slope, bend) => {
      const f = (x: number): number => slope * (x - at) + bend * (x - at) ** 3;
      const root = rootBetween(f, -6, 6);
      expect(root).not.toBeNull();
      expect(Math.abs((root ?? NaN) - at)).toBeLessThan(1e-13);
    }),
  );
});
