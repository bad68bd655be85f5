import fc from 'fast-check';
import { expect, test } from 'vitest';
import { slideOf, slidingForce, stopLoad } from '$lib/stand/sliding.ts';
import { numberFrom } from '../../numbers.ts';

/** Whether friction holds a weight on a slope falling along +y against a horizontal push (x across, y down the slope). */
function holds(slope: number, friction: number, weight: number, x: number, y: number): boolean {
  const normal = weight * Math.cos(slope) - y * Math.sin(slope);
  const down = weight * Math.sin(slope) + y * Math.cos(slope);
  return normal > 0 && Math.hypot(x, down) <= friction * normal;
}

test('a push slides a weight when friction no longer balances the forces', () => {
  fc.assert(
    fc.property(numberFrom(0, 0.5), numberFrom(0.05, 1), numberFrom(5, 200), (slope, friction, weight) => {
      const slide = slideOf(slope, friction);
      fc.pre(slide.margin > 1e-3);
      const ways = { down: [0, 1], up: [0, -1], across: [1, 0] } as const;
      for (const way of ['down', 'up', 'across'] as const) {
        const [x, y] = ways[way];
        const force = slidingForce(slide, weight, way);
        if (force === null) throw new Error('a slope this flat gives way to a push');
        expect(holds(slope, friction, weight, x * force * 0.999999, y * force * 0.999999)).toBe(true);
        expect(holds(slope, friction, weight, x * force * 1.000001, y * force * 1.000001)).toBe(false);
      }
    }),
  );
});

test('past the friction angle it slides by itself, and a stop takes what friction does not', () => {
  fc.assert(
    fc.property(numberFrom(0.01, 1), numberFrom(0.01, 1), numberFrom(5, 200), (slope, friction, weight) => {
      const slide = slideOf(-slope, friction);
      expect(slide.slope).toBe(slope);
      expect(slide.frictionNeeded > friction).toBe(slide.margin < 0);
      const rest = weight * (Math.sin(slope) - friction * Math.cos(slope));
      expect(stopLoad(slide, weight)).toBeCloseTo(Math.max(0, rest), 9);
      if (slide.margin < 0) expect(slidingForce(slide, weight, 'down')).toBe(0);
    }),
  );
});

test('no push drives a weight up a slope so steep that it only presses on it', () => {
  expect(slidingForce(slideOf(1, 1), 10, 'up')).toBeNull();
});
