import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addBeyond } from '$lib/acoustics/fresnel.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import type { Screen } from '$lib/acoustics/screens.ts';
import { shade, shadesOn } from '$lib/acoustics/shading.ts';
import { silence } from '$lib/acoustics/wave.ts';
import { along, distance, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { uprightBox } from '$lib/geometry/solid.ts';
import { numberFrom } from '../numbers.ts';
import { fresnel } from './fresnelSeries.ts';
import { pointIn } from './placed.ts';
import { runs } from '../runs.ts';
import { fresnelTable } from './fresnelTable.ts';

const SPEED = 343.2;

const box = (lowest: Vec3, size: Vec3): Screen => ({
  name: 'left-cabinet',
  monitor: null,
  body: uprightBox(lowest, size),
  width: 100,
});

/** What is left of a sum of 1 at each frequency. */
function leftOf(from: Vec3, to: Vec3, screens: readonly Screen[], speed = SPEED) {
  const sum = silence();
  sum.re.fill(1);
  shade(sum, shadesOn(from, to, screens, speed));
  return sum;
}

test.each(fresnelTable)('an edge far from both ends takes what a knife edge takes: v = %s', (v, C, S) => {
  // The loss as in ITU-R P.526, exact.
  const loss = -20 * Math.log10(Math.hypot(1 - C - S, C - S) / 2);
  const away = 1e8;
  const place = 300;
  const length = (1000 * SPEED) / (frequencies[place] ?? NaN);
  const h = v * Math.sqrt((length * away) / 4);
  const edge = box(vec3(-1e12, -0.5, h - 1e12), vec3(2e12, 1, 1e12));
  const { re, im } = leftOf(vec3(0, -away, 0), vec3(0, away, 0), [edge]);
  expect(Math.abs(-20 * Math.log10(Math.hypot(re[place] ?? NaN, im[place] ?? NaN)) - loss)).toBeLessThan(2e-3);
});

test('what lies beyond v is Fresnel’s integral', () => {
  const place = 300;
  for (let v = -12; v < 12; v += 0.0173) {
    const [c, s] = fresnel(v);
    const found = silence();
    addBeyond(v / Math.sqrt(frequencies[place] ?? NaN), 1, { first: place, end: place + 1 }, found);
    expect(Math.abs(0.5 - c - (found.re[place] ?? NaN))).toBeLessThan(2e-6);
    expect(Math.abs(-0.5 - s - (found.im[place] ?? NaN))).toBeLessThan(2e-6);
  }
});

test('a body takes the Fresnel integrals over its outline', () => {
  let found = 0;
  fc.assert(
    fc.property(
      pointIn([-300, 300], [300, 800], [-200, 500]),
      pointIn([-300, 300], [-800, -300], [-200, 500]),
      (from, to) => {
        const screen = box(vec3(-90, -120, 0), vec3(180, 240, 270));
        const [one] = shadesOn(from, to, [screen], SPEED);
        if (!one) return;
        found++;
        const { re, im } = leftOf(from, to, [screen]);
        for (const place of [100, 250, 400]) {
          const root = Math.sqrt(frequencies[place] ?? NaN);
          const over = ([low, high]: readonly [number, number]) => {
            const [a, b] = [fresnel(low * root), fresnel(high * root)];
            return [b[0] - a[0], b[1] - a[1]] as const;
          };
          const [[a, b], [c, d]] = [over(one.across), over(one.up)];
          expect(Math.abs((re[place] ?? NaN) - (1 + (one.weight / 2) * (a * d + b * c)))).toBeLessThan(1e-5);
          expect(Math.abs((im[place] ?? NaN) + (one.weight / 2) * (a * c - b * d))).toBeLessThan(1e-5);
        }
      },
    ),
    { numRuns: runs(100) },
  );
  expect(found).toBeGreaterThan(5);
});

test('a long wave does not notice a body, a short one is taken away behind a wide one', () => {
  const wide = box(vec3(-700, -20, -700), vec3(1400, 40, 1400));
  const { re, im } = leftOf(vec3(0, 300, 0), vec3(0, -300, 0), [wide]);
  const size = (i: number): number => Math.hypot(re[i] ?? NaN, im[i] ?? NaN);
  const narrow = leftOf(vec3(0, 300, 0), vec3(0, -300, 0), [box(vec3(-90, -90, -90), vec3(180, 180, 180))]);
  expect(Math.abs(20 * Math.log10(Math.hypot(narrow.re[0] ?? NaN, narrow.im[0] ?? NaN)))).toBeLessThan(0.5);
  expect(20 * Math.log10(size(470))).toBeLessThan(-15);
});

test('what is behind the source or the head, or far to the side, takes nothing', () => {
  const from = vec3(0, 400, 0);
  const head = vec3(0, -400, 0);
  for (const [lowest, size] of [
    [vec3(-90, 401, -90), vec3(180, 200, 270)],
    [vec3(-90, -700, -90), vec3(180, 200, 270)],
    [vec3(900, -100, -90), vec3(180, 200, 270)],
  ] as const)
    expect(shadesOn(from, head, [box(lowest, size)], SPEED)).toEqual([]);
});

test('source and head may change places', () => {
  const anywhere = pointIn([-600, 600], [-600, 600], [-300, 500]);
  const screens = [box(vec3(-90, -50, 0), vec3(180, 200, 270)), box(vec3(200, -200, -50), vec3(400, 20, 300))];
  fc.assert(
    fc.property(anywhere, anywhere, (from, to) => {
      fc.pre(distance(from, to) > 1);
      const [there, back] = [leftOf(from, to, screens), leftOf(to, from, screens)];
      there.re.forEach((re, i) => {
        expect(Math.hypot(re - (back.re[i] ?? NaN), (there.im[i] ?? NaN) - (back.im[i] ?? NaN))).toBeLessThan(1e-6);
      });
    }),
    { numRuns: runs(200) },
  );
});

test('nothing jumps as anything moves: a millimetre changes no wave by a twentieth of the direct sound', () => {
  const screen = box(vec3(-90, -120, 0), vec3(180, 240, 270));
  const around = pointIn([-400, 400], [-600, 600], [-200, 500]);
  const clear = ({ x, y, z }: Vec3): boolean => Math.abs(x) > 140 || Math.abs(y) > 170 || z < -50 || z > 320;
  let near = 0;
  fc.assert(
    fc.property(around, around, pointIn([-1, 1], [-1, 1], [-1, 1]), numberFrom(0, 1), (from, to, towards, share) => {
      fc.pre(clear(from) && clear(to) && distance(from, to) > 200);
      const size = Math.max(1e-3, Math.hypot(towards.x, towards.y, towards.z));
      const step = share / size;
      const before = leftOf(from, to, [screen]);
      const after = leftOf(from, along(to, towards, step), [screen]);
      if (before.re.some((re) => Math.abs(re - 1) > 0.1)) near++;
      before.re.forEach((re, i) => {
        const change = Math.hypot(re - (after.re[i] ?? NaN), (before.im[i] ?? NaN) - (after.im[i] ?? NaN));
        expect(change).toBeLessThan(0.05);
      });
    }),
    { numRuns: runs(500) },
  );
  expect(near).toBeGreaterThan(10);
});
