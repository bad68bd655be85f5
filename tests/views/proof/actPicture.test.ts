import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { mendByMoving, mendByTurning } from '$lib/proof/mend.ts';
import { actPicture } from '$lib/views/proof/actPicture.ts';
import { runs } from '../../runs.ts';
import { numberFrom } from '../../numbers.ts';
import { off, planned } from '../../proof/stands.ts';

const between = ([a, b]: Point, [x, y]: Point): number => Math.hypot(a - x, b - y);
const sizes = (outline: readonly Point[]): number[] => outline.map((at, i) => between(at, outline[(i + 1) % outline.length] ?? at)); // prettier-ignore

test('what is done is drawn as a body that is turned or moved, so many times as far as it goes', () => {
  const seen = { shim: 0, turn: 0, move: 0 };
  fc.assert(
    fc.property(
      fc.tuple(numberFrom(-15, 15), numberFrom(-15, 15), numberFrom(-5, 5), numberFrom(-4, 4), numberFrom(-3, 3), numberFrom(-1, 1)),
      fc.constantFrom('left' as const, 'right' as const),
      fc.constantFrom(mendByTurning, mendByMoving),
      (by, side, mend) => {
        const { cabinet, plan, head } = planned(side);
        let before = off(plan, by);
        for (const act of mend(cabinet, before, head) ?? []) {
          const picture = actPicture(cabinet, before, act);
          before = act.standing;
          seen[act.act] += 1;
          // The body keeps its size, the pivot stays, and what is drawn is seen.
          const [was, is] = [sizes(picture.before), sizes(picture.after)];
          was.forEach((size, i) => expect(is[i]).toBeCloseTo(size, 6));
          expect(picture.times).toBeGreaterThanOrEqual(1);
          expect(picture.times).toBeLessThanOrEqual(20);
          const moved = picture.before.map((at, i) => between(at, picture.after[i] ?? at));
          expect(picture.before.concat(picture.after, picture.mark).flat().every(Number.isFinite)).toBe(true);
          if (act.act === 'shim') {
            // The raised edge goes up by the card, so many times; the other one stays.
            const [kept, edge] = act.where === 'rear' ? [0, 1] : [1, 0];
            expect(moved[kept]).toBeCloseTo(0, 9);
            expect((picture.after[edge]?.[1] ?? 0) - (picture.before[edge]?.[1] ?? 0)).toBeGreaterThanOrEqual(0);
          } else if (act.act === 'move') {
            for (const way of moved) expect(way).toBeCloseTo(picture.times * Math.hypot(act.by.x, act.by.y), 6);
          } else {
            // A plumb pivot in the middle of the front edge: its ends go as far as one another.
            expect(moved[0]).toBeCloseTo(moved[3] ?? NaN, 1);
          }
        }
      },
    ),
    { numRuns: runs(300) },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(3);
}); // prettier-ignore
