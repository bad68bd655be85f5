import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { random } from '$lib/geometry/random.ts';
import { spreadEllipse } from '$lib/geometry/spreadEllipse.ts';
import { runs } from '../runs.ts';

const shift = fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true }));
const shifts = fc.array(shift, { minLength: 1, maxLength: 9 });

// χ² of two degrees of freedom: 95 % lie under 5.991465 (any table of it; here −2 ln 0.05).
const K = Math.sqrt(5.991464547107979);

test('two equal shifts at right angles give a circle, one alone a line along it', () => {
  const round = spreadEllipse([
    [3, 4],
    [-4, 3],
  ]);
  expect(round.major).toBeCloseTo((K * 5) / Math.sqrt(3), 9);
  expect(round.minor).toBeCloseTo(round.major, 6);
  const line = spreadEllipse([[3, 4]]);
  expect(line.minor).toBeCloseTo(0, 6);
  expect(Math.tan(line.turn)).toBeCloseTo(4 / 3, 9);
});

test('turns with its shifts, and nothing else of it changes', () => {
  fc.assert(
    fc.property(shifts, fc.double({ min: -3, max: 3, noNaN: true }), (all, by) => {
      const turned = all.map(([x, y]): Point => [
        x * Math.cos(by) - y * Math.sin(by),
        x * Math.sin(by) + y * Math.cos(by),
      ]);
      const [before, after] = [spreadEllipse(all), spreadEllipse(turned)];
      // The shorter axis comes from a difference: half the digits are lost where it is next to nothing.
      expect(after.major).toBeCloseTo(before.major, 6);
      expect(Math.abs(after.minor - before.minor)).toBeLessThan(1e-5);
    }),
    { numRuns: runs(300) },
  );
});

test('holds about 95 % of the sums of many shifts drawn at random', () => {
  const { share } = random(11);
  const all: Point[] = Array.from({ length: 12 }, (_, index) => [
    Math.cos(index) * (index + 1),
    Math.sin(index * 2) * 6,
  ]);
  const { major, minor, turn } = spreadEllipse(all);
  let within = 0;
  for (let trial = 0; trial < 10_000; trial += 1) {
    let [x, y] = [0, 0];
    for (const [dx, dy] of all) {
      const part = 2 * share() - 1;
      x += part * dx;
      y += part * dy;
    }
    const [u, v] = [x * Math.cos(turn) + y * Math.sin(turn), y * Math.cos(turn) - x * Math.sin(turn)];
    if ((u / major) ** 2 + (v / minor) ** 2 <= 1) within += 1;
  }
  // Counts of 10,000 that a band of 95 % passes but for one time in a million are 9390 to 9603; a sum of rectangles is a little shorter in its tails.
  expect(within).toBeGreaterThan(9390);
  expect(within).toBeLessThan(9700);
});
