import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { taskOf } from '$lib/proof/prove.ts';
import { pointerError, sightSpots } from '$lib/proof/sight.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';

test('a light square to the baffle meets the card where the planned axis does; one on top lies on the cabinet’s own slope', () => {
  let answered = 0;
  fc.assert(
    fc.property(anyDesk, fc.constantFrom('left' as const, 'right' as const), (desk, side) => {
      const of = project(desk);
      const task = taskOf(of, firstLayout(of), side);
      if (!task.ok) return;
      answered += 1;
      const { cabinet, planned, head } = task.value;
      const spots = sightSpots(task.value, side);
      const baffle = spots.find(({ on }) => on === 'baffle');
      if (baffle && task.value.past < 1e-9) {
        expect(Math.hypot(baffle.right, baffle.over)).toBeLessThan(1e-6);
      }
      const top = spots.find(({ on }) => on === 'top');
      if (!top) return;
      // By the textbook: from the top's front edge, level run to the card over the cosine of the toe, times the slope.
      const sign = side === 'left' ? -1 : 1;
      const lean = planned.tilt + cabinet.rake;
      const [up, back] = [cabinet.baffle * Math.cos(lean), cabinet.baffle * Math.sin(lean)];
      const y = planned.y + back * Math.cos(planned.toe);
      const x = planned.x + back * Math.sin(planned.toe);
      const run = (y - head.y) / Math.cos(planned.toe);
      expect(top.z).toBeCloseTo(planned.front + up + run * Math.tan(planned.tilt), 6);
      expect(sign * top.x).toBeCloseTo(x - run * Math.sin(planned.toe), 6);
      expect(top.right).toBeCloseTo(top.x - head.x, 9);
      expect(top.over).toBeCloseTo(top.z - head.z, 9);
    }),
  );
  expect(answered).toBeGreaterThan(3);
});

test.each([
  [5, 900, 0.159],
  [10, 900, 0.318],
])('a pointer whose circle is %d mm at %d mm points %d° past its body', (circle, away, error) => {
  expect(degrees(pointerError(circle, away))).toBeCloseTo(error, 3);
});
