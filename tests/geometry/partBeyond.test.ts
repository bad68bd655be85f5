import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { partBeyond } from '$lib/geometry/partBeyond.ts';
import { relieveCorners } from '$lib/geometry/relieveCorners.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import type { Point } from '$lib/geometry/point.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

/** A block with a slot into its top: rounded outside, relieved inside. */
const outline: readonly Point[] = [
  [0, 0],
  [80, 0],
  [80, 40],
  [50, 40],
  [50, 15],
  [30, 15],
  [30, 40],
  [0, 40],
];
const path = relieveCorners(roundCorners(outline, 6, (i) => i < 3 || i === 7).path, 3);

const dense = edgesOf(path).flatMap((edge) =>
  Array.from({ length: edge.kind === 'arc' ? 400 : 1 }, (_, i) => pointAt(edge, i / 400)).map(([x, y]) => ({ x, y })),
);

it('is what another library leaves of it, arcs and several parts included', () => {
  let several = 0;
  fc.assert(
    fc.property(numberFrom(5, 75), numberFrom(2, 38), numberFrom(0, 2 * Math.PI), (x, y, angle) => {
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const part = partBeyond(path, [x, y], [x + cos, y + sin]);
      const at = (along: number, left: number) => ({
        x: x + along * cos - left * sin,
        y: y + along * sin + left * cos,
      });
      const half = [at(-500, 0), at(500, 0), at(500, 500), at(-500, 500)];
      const left = intersectD([dense], [half], FillRule.NonZero, 8);
      if (left.length > 1) several += 1;
      expect(part ? momentsOf(part).area : 0).toBeCloseTo(Math.abs(areaPathsD(left)), 2);
    }),
    { numRuns: runs(300) },
  );
  expect(several).toBeGreaterThan(0);
});

it('is nothing on one side of what lies on the other, and all of it there', () => {
  expect(partBeyond(path, [0, 50], [1, 50])).toBeNull();
  expect(momentsOf(partBeyond(path, [1, 50], [0, 50]) ?? path).area).toBeCloseTo(momentsOf(path).area, 9);
});
