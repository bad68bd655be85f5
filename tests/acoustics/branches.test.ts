import fc from 'fast-check';
import { expect, test } from 'vitest';
import { branches, type Transfer } from '$lib/acoustics/branches.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import type { Crossover, Driver } from '$lib/project/project.ts';
import { angle, magnitude, plus, times, type Complex } from './complex.ts';
import { highPass, lowPass } from './filters.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(30) };
const driver = (name: string, role: Driver['role'], height: number): Driver => ({
  name,
  role,
  diameter: 50,
  radiating: null,
  height,
  offset: 0,
  acousticDepth: 0,
});
const tweeter = driver('tweeter', 'tweeter', 300);
const mid = driver('mid', 'midrange', 200);
const woofer = driver('woofer', 'woofer', 100);
const twin = driver('twin', 'woofer', 400);
const cross = (upper: Driver, lower: Driver, frequency: number, alignment: Crossover['alignment'] = 'in-phase') =>
  ({ between: [upper.name, lower.name], frequency, alignment }) as const;

const at = (transfer: Transfer | undefined, i: number): Complex => [transfer?.re[i] ?? NaN, transfer?.im[i] ?? NaN];
const sumAt = (all: readonly Transfer[], i: number): Complex =>
  all.reduce<Complex>((sum, one) => plus(sum, at(one, i)), [0, 0]);

test.each(['in-phase', 'quadrature'] as const)('%s: a pair is the textbook filters and sums flat', (alignment) => {
  const order = alignment === 'in-phase' ? 4 : 3;
  fc.assert(
    fc.property(numberFrom(50, 10000), (corner) => {
      const pair = branches([tweeter, woofer], [cross(tweeter, woofer, corner, alignment)]);
      frequencies.forEach((f, i) => {
        const [high, low] = [at(pair[0], i), at(pair[1], i)];
        expect(magnitude(plus(high, times([-1, 0], highPass(order, f / corner))))).toBeLessThan(1e-12);
        expect(magnitude(plus(low, times([-1, 0], lowPass(order, f / corner))))).toBeLessThan(1e-12);
        expect(Math.abs(magnitude(plus(high, low)) - 1)).toBeLessThan(1e-12);
      });
    }),
    { numRuns: runs(20) },
  );
});

test('in phase the branches stay in phase at all frequencies; in quadrature the high-pass stays a quarter turn behind', () => {
  for (const [alignment, lag] of [
    ['in-phase', 0],
    ['quadrature', Math.PI / 2],
  ] as const) {
    const [high, low] = branches([tweeter, woofer], [cross(tweeter, woofer, 1000, alignment)]);
    frequencies.forEach((_, i) => {
      const turn = angle(at(low, i)) - angle(at(high, i)) - lag;
      expect(Math.cos(turn)).toBeCloseTo(1, 9);
    });
  }
});

test('a driver in no crossover plays everything; two such share it', () => {
  const [alone] = branches([woofer], []);
  const both = branches([woofer, tweeter], []);
  frequencies.forEach((_, i) => {
    expect(at(alone, i)).toEqual([1, 0]);
    expect(at(both[0], i)).toEqual([0.5, 0]);
  });
});

test('a tweeter crossed to two woofers alike gets its filter once, and all three still sum flat', () => {
  fc.assert(
    fc.property(numberFrom(100, 8000), (corner) => {
      const three = branches([twin, tweeter, woofer], [cross(tweeter, twin, corner), cross(tweeter, woofer, corner)]);
      const two = branches([tweeter, woofer], [cross(tweeter, woofer, corner)]);
      frequencies.forEach((_, i) => {
        expect(at(three[1], i)).toEqual(at(two[0], i));
        expect(Math.abs(magnitude(sumAt(three, i)) - 1)).toBeLessThan(1e-12);
      });
    }),
    RUNS,
  );
});

test('three bands far apart sum nearly flat', () => {
  const three = branches([tweeter, mid, woofer], [cross(tweeter, mid, 5000), cross(mid, woofer, 200)]);
  // At 200 Hz the upper crossover turns the midrange by 2·√2·(200/5000) = 0.11 rad; half of that parts it from the sum.
  frequencies.forEach((_, i) => expect(Math.abs(magnitude(sumAt(three, i)) - 1)).toBeLessThan(0.01));
});
