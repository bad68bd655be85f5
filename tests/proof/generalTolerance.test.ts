import { expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { angleTolerance, lengthTolerance, toleranceClasses } from '$lib/proof/generalTolerance.ts';

// ISO 2768-1:1989, tables 1 and 3; rows as several tables of it agree.
test.each([
  [5, 0.05, 0.1, 0.3, 0.5],
  [30, 0.1, 0.2, 0.5, 1],
  [30.1, 0.15, 0.3, 0.8, 1.5],
  [205, 0.2, 0.5, 1.2, 2.5],
  [430, 0.3, 0.8, 2, 4],
])('a length of %f mm', (size, ...of) => {
  expect(toleranceClasses.map((one) => lengthTolerance(size, one))).toEqual(of);
});

test.each([
  [10, 60, 60, 90, 180],
  [50, 30, 30, 60, 120],
  [120, 20, 20, 30, 60],
  [205, 10, 10, 15, 30],
  [500, 5, 5, 10, 20],
])('an angle with a shorter leg of %f mm, in minutes', (leg, ...of) => {
  const minutes = toleranceClasses.map((one) => degrees(angleTolerance(leg, one)) * 60);
  for (const [index, value] of minutes.entries()) expect(value).toBeCloseTo(of[index] ?? NaN, 9);
});

test('10′ is 2.6 mm at 0.9 m, and 0.582 mm over 200 mm', () => {
  expect(900 * Math.tan(angleTolerance(205, 'm'))).toBeCloseTo(2.618, 3);
  expect(200 * Math.tan(angleTolerance(205, 'm'))).toBeCloseTo(0.582, 3);
});
