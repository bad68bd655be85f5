import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cosineNear, sineNear } from '$lib/acoustics/turn.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

test('cosine and sine are the language’s own but for the last digits', () => {
  fc.assert(
    fc.property(fc.oneof(numberFrom(-10, 10), numberFrom(-20000, 20000)), (angle) => {
      const digits = 1e-15 * Math.max(1, Math.abs(angle));
      expect(Math.abs(cosineNear(angle) - Math.cos(angle))).toBeLessThan(digits);
      expect(Math.abs(sineNear(angle) - Math.sin(angle))).toBeLessThan(digits);
    }),
    { numRuns: runs(5000) },
  );
});
