import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Span } from '$lib/stand/span.ts';
import { leastPush, slideOf, slidingForce, stopLoad } from '$lib/stand/sliding.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(300) };

const known = (friction: number): Span => ({ least: friction, most: friction });
const free = (slope: number, friction: number) => slideOf(slope, known(friction), false);
const stopped = (slope: number, friction: number) => slideOf(slope, known(friction), true);

interface Held {
  readonly slope: number;
  readonly friction: number;
  readonly stop: boolean;
}

/**
 * Statics of a weight on a slope that falls along +y, under one force (x across, y down the slope in plan, z up): whether
 * friction, and a stop that only presses up the slope, can balance it.
 */
function holds({ slope, friction, stop }: Held, force: readonly [x: number, y: number, z: number]): boolean {
  const [x, y, z] = force;
  const normal = -(y * Math.sin(slope) + z * Math.cos(slope));
  const down = y * Math.cos(slope) - z * Math.sin(slope);
  // The least that friction must give: a stop takes what of it it likes of a pull down the slope.
  const rest = stop ? Math.min(0, down) : down;
  return normal > 0 && Math.hypot(x, rest) <= friction * normal;
}

const pushed = (weight: number, x: number, y: number) => [x, y, -weight] as const;
/** The weight as it pulls on a plane tilted by so much, falling at `to` from the slope's fall. */
const tilted = (by: number, to: number) =>
  [Math.sin(by) * Math.sin(to), Math.sin(by) * Math.cos(to), -Math.cos(by)] as const;

const turns = Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360);
const scene = [numberFrom(0, 0.5), numberFrom(0.05, 1), numberFrom(5, 200), fc.boolean()] as const;

describe('a push', () => {
  test('slides a weight when friction and stop no longer balance the forces, each way', () => {
    let tried = 0;
    fc.assert(
      fc.property(...scene, (slope, friction, weight, stop) => {
        const slide = slideOf(slope, known(friction), stop);
        if (!stop && slide.margin < 1e-3) return;
        const ways = { down: [0, 1], up: [0, -1], across: [1, 0] } as const;
        for (const way of ['down', 'up', 'across'] as const) {
          const [x, y] = ways[way];
          const force = slidingForce(slide, weight, way);
          if (force === null) {
            expect([stop, way]).toEqual([true, 'down']);
            continue;
          }
          tried += 1;
          const at = (share: number) => pushed(weight, x * force * share, y * force * share);
          expect(holds({ slope, friction, stop }, at(0.999999))).toBe(true);
          expect(holds({ slope, friction, stop }, at(1.000001))).toBe(false);
        }
      }),
      RUNS,
    );
    expect(tried).toBeGreaterThan(runs(300) / 3);
  });

  test('of the least force that starts it: less starts it in no direction, a little more in one', () => {
    let tried = 0;
    fc.assert(
      fc.property(...scene, (slope, friction, weight, stop) => {
        const slide = slideOf(slope, known(friction), stop);
        if (slide.survives.least < 1e-3) return;
        tried += 1;
        const force = leastPush(slide, weight);
        const starts = (share: number): boolean =>
          turns.some(
            (to) =>
              !holds(
                { slope, friction, stop },
                pushed(weight, share * force * Math.sin(to), share * force * Math.cos(to)),
              ),
          );
        expect(starts(0.999999)).toBe(false);
        // Half a degree between the directions: the least of a curve is missed by less than 4e-5 of it for these slopes.
        expect(starts(1.0001)).toBe(true);
      }),
      RUNS,
    );
    expect(tried).toBeGreaterThan(runs(300) / 3);
  });

  test('up a slope so steep that it only presses on it drives no weight', () => {
    expect(slidingForce(free(1, 1), 10, 'up')).toBeNull();
  });
});

test('it stays on the steepest plane that is stated, whichever way that is turned, and on none steeper', () => {
  let tried = 0;
  fc.assert(
    fc.property(...scene, (slope, friction, _, stop) => {
      const { least } = slideOf(slope, known(friction), stop).survives;
      if (least < 1e-3) return;
      tried += 1;
      const stays = (by: number): boolean => turns.every((to) => holds({ slope, friction, stop }, tilted(by, to)));
      expect(stays(least * 0.999999)).toBe(true);
      expect(stays(least * 1.0001)).toBe(false);
    }),
    RUNS,
  );
  expect(tried).toBeGreaterThan(runs(300) / 3);
});

test('past the friction angle it slides by itself, and a stop takes what friction does not', () => {
  let past = 0;
  fc.assert(
    fc.property(numberFrom(0.01, 1), numberFrom(0.01, 1), numberFrom(5, 200), (slope, friction, weight) => {
      const slide = free(-slope, friction);
      expect(slide.slope).toBe(slope);
      expect(slide.frictionNeeded > friction).toBe(slide.margin < 0);
      const rest = weight * (Math.sin(slope) - friction * Math.cos(slope));
      expect(stopLoad(slide, weight)).toBeCloseTo(Math.max(0, rest), 9);
      if (slide.margin >= 0) return;
      past += 1;
      expect(slidingForce(slide, weight, 'down')).toBe(0);
      expect(leastPush(slide, weight)).toBe(0);
      expect(stopped(slope, friction).survives.least).toBeGreaterThan(0);
    }),
    RUNS,
  );
  expect(past).toBeGreaterThan(runs(300) / 5);
});

test('friction as a range: the least and the most give the ends of the planes', () => {
  const slide = slideOf(0.2, { least: 0.3, most: 0.75 }, false);
  expect(slide.survives.least).toBeCloseTo(Math.atan(0.3) - 0.2, 12);
  expect(slide.survives.most).toBeCloseTo(Math.atan(0.75) - 0.2, 12);
});
