import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pathDifference } from '$lib/acoustics/path.ts';
import { distance, mirrorX, vec3 } from '$lib/geometry/point.ts';
import { pointIn } from './placed.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(1000) };
const anywhere = pointIn([-3000, 3000], [-3000, 3000], [-1000, 2000]);

/** Two paths of some metres, each rounded at 1e-12 mm. */
const ROUNDING = 1e-11;

test('is the one distance less the other', () => {
  fc.assert(
    fc.property(anywhere, anywhere, anywhere, (a, b, head) => {
      const plain = distance(a, head) - distance(b, head);
      expect(Math.abs(pathDifference(a, b, head) - plain)).toBeLessThan(ROUNDING);
    }),
    RUNS,
  );
});

test('changes its sign with the order and keeps its value in the mirror', () => {
  fc.assert(
    fc.property(anywhere, anywhere, anywhere, (a, b, head) => {
      const difference = pathDifference(a, b, head);
      expect(pathDifference(b, a, head)).toBeCloseTo(-difference, 11);
      expect(pathDifference(mirrorX(a), mirrorX(b), mirrorX(head))).toBeCloseTo(difference, 11);
    }),
    RUNS,
  );
});

test('keeps its digits where the paths are nearly equal', () => {
  // Two points 2e-9 mm apart along a path of a metre: subtracting lengths would round at 1e-13 mm, four digits left.
  const difference = pathDifference(vec3(1e-9, 0, 0), vec3(-1e-9, 0, 0), vec3(-600, 800, 0));
  expect(difference / (2e-9 * 0.6)).toBeCloseTo(1, 12);
});

test('is 0 where there is no path at all', () => {
  const head = vec3(1, 2, 3);
  expect(pathDifference(head, head, head)).toBe(0);
});
