import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { builtStands } from '$lib/proof/builtStands.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';
import { blank, off, planned, taken } from './stands.ts';

test('finished stands stand as a careful hand reads them: slope, and height of the lowest edge', () => {
  const byFront = fc.tuple(numberFrom(-5, 5), numberFrom(-6, 6));
  const kinds = [blank.front, blank.rear];
  fc.assert(
    fc.property(byFront, byFront, ([leftFront, leftTilt], [rightFront, rightTilt]) => {
      const [left, right] = [planned('left'), planned('right')];
      const real = {
        left: off(left.plan, [0, 0, leftFront, 0, leftTilt, 0]),
        right: off(right.plan, [0, 0, rightFront, 0, rightTilt, 0]),
      };
      const sides = {
        left: { readings: taken(kinds, real.left, left) },
        right: { readings: taken(kinds, real.right, right) },
      };
      const of = project({ '/layouts/0/built': { sides } });
      const found = builtStands(of, firstLayout(of));
      for (const side of ['left', 'right'] as const) {
        const { tilt, front } = real[side];
        // The lower of the two bottom edges: the rear one under a front that is high.
        const lowest = Math.min(front, front - of.speaker.depth * Math.sin(tilt));
        expect(found?.[side].tilt).toBeCloseTo(degrees(tilt), 2);
        expect(Math.abs((found?.[side].lift ?? NaN) - Math.max(0, lowest))).toBeLessThan(0.05);
      }
    }),
    { numRuns: runs(100) },
  );
});
