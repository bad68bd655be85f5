import fc from 'fast-check';
import { expect, test } from 'vitest';
import { phoneLevel } from '$lib/proof/phoneLevel.ts';
import { numberFrom } from '../numbers.ts';
import { gaussian } from './gaussian.ts';

test('turned round, a level’s own zero falls out, whatever it is', () => {
  fc.assert(
    fc.property(numberFrom(-60, 60), numberFrom(-5, 5), (slope, zero) => {
      const found = phoneLevel([slope + zero, slope + zero], [zero - slope, zero - slope]);
      expect(found.slope).toBeCloseTo(slope, 9);
      expect(found.zero).toBeCloseTo(zero, 9);
      expect(found.sure).toBeCloseTo(0.2, 9);
    }),
  );
});

test('what it scatters by makes it less sure, as the deviation of a mean has it', () => {
  // Two means of 100 readings with a deviation of 2°: u = √2 · 2/√100 / 2 = 0.1414°, expanded by 1.96 and joined with 0.2°.
  const normal = gaussian(11);
  const shown = (middle: number) => Array.from({ length: 100 }, () => middle + 2 * normal());
  const { slope, sure } = phoneLevel(shown(12), shown(-12));
  expect(Math.abs(sure - Math.hypot(0.2, 1.96 * 0.1414))).toBeLessThan(0.06);
  expect(Math.abs(slope - 12)).toBeLessThan(3 * 0.1414);
});

test('one reading each way is enough for a slope', () => {
  expect(phoneLevel([15], [-14])).toEqual({ slope: 14.5, zero: 0.5, sure: 0.2 });
});
