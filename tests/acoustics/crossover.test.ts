import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crossoverSums } from '$lib/acoustics/crossover.ts';
import { CANCELLED } from '$lib/acoustics/driversMeet.ts';
import { distance, mirrorX, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover, Driver } from '$lib/project/project.ts';
import { expi, magnitude, plus, times } from './complex.ts';
import { highPass, lowPass } from './filters.ts';
import { numberFrom } from '../numbers.ts';
import { placed, pointIn, sumAsTheyStand, towered, twoWay } from './placed.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(1000) };
const SPEED = 343.2;

const roles = ['tweeter', 'full-range', 'midrange', 'woofer'] as const;
const anyRole = fc.constantFrom(...roles);
const onBaffle = pointIn([-300, 300], [0, 400], [50, 600]);
const seat = pointIn([-800, 800], [-2500, -200], [200, 900]);
const alignment = fc.constantFrom('in-phase', 'quadrature');

const only = (crossover: Crossover, drivers: readonly PlacedDriver[], head: Vec3, speed = SPEED) =>
  sumAsTheyStand(crossover, drivers, head, speed);

/** Two drivers a and b with any roles, heights and places, and a crossover between them. */
const pair = fc.record({
  a: fc.record({ role: anyRole, height: numberFrom(20, 500), at: onBaffle }),
  b: fc.record({ role: anyRole, height: numberFrom(20, 500), at: onBaffle }),
  swap: fc.boolean(),
  frequency: numberFrom(20, 20000),
  alignment,
});
type Pair = typeof pair extends fc.Arbitrary<infer Value> ? Value : never;

const driversOf = ({ a, b }: Pair): readonly [PlacedDriver, PlacedDriver] => [
  placed('a', a.role, a.height, a.at),
  placed('b', b.role, b.height, b.at),
];
const crossoverOf = ({ swap, frequency, alignment }: Pair): Crossover => ({
  between: swap ? ['b', 'a'] : ['a', 'b'],
  frequency,
  alignment,
});

/**
 * The level by adding the two waves: each branch's own filter at its corner, turned by the whole way to the head, over
 * the sum of the two sizes. Which driver is the high-pass is read off the order of `roles`.
 */
function levelByWaves(crossover: Crossover, drivers: readonly PlacedDriver[], head: Vec3): number {
  const named = crossover.between.map((name) => drivers.find(({ driver }) => driver.name === name));
  const [first, second] = named;
  if (!first || !second) throw new Error('expected both drivers');
  const rank = (role: Driver['role']): number => roles.indexOf(role);
  const firstIsHigh = rank(first.driver.role) <= rank(second.driver.role);
  const order = crossover.alignment === 'quadrature' ? 3 : 4;
  const wave = (filter: typeof highPass, from: PlacedDriver) => {
    const turns = (crossover.frequency * distance(from.acousticCentre, head)) / (1000 * SPEED);
    return times(filter(order), expi(-2 * Math.PI * turns));
  };
  const together = magnitude(
    plus(wave(firstIsHigh ? highPass : lowPass, first), wave(firstIsHigh ? lowPass : highPass, second)),
  );
  return 20 * Math.log10(together / (magnitude(highPass(order)) + magnitude(lowPass(order))));
}

test('adding the waves of a Linkwitz-Riley or a Butterworth pair gives the same level', () => {
  fc.assert(
    fc.property(pair, seat, (two, head) => {
      const { sumLevel } = only(crossoverOf(two), driversOf(two), head);
      const waves = levelByWaves(crossoverOf(two), driversOf(two), head);
      // Near a null the level falls without end and rounding with it: compare the sizes.
      const size = sumLevel === null ? 0 : 10 ** (sumLevel / 20);
      expect(Math.abs(size - 10 ** (waves / 20))).toBeLessThan(sumLevel === null ? CANCELLED : 1e-10);
    }),
    RUNS,
  );
});

test('the level never passes the sum in phase', () => {
  fc.assert(
    fc.property(pair, seat, (two, head) => {
      const { sumLevel } = only(crossoverOf(two), driversOf(two), head);
      // Rounding of the two logarithms that are added.
      expect(sumLevel ?? -Infinity).toBeLessThanOrEqual(1e-12);
    }),
    RUNS,
  );
});

test('the path difference is that of the lower driver less that of the upper, in whatever order they are named', () => {
  fc.assert(
    fc.property(pair, seat, (two, head) => {
      fc.pre(two.a.height !== two.b.height);
      const [lower, upper] = two.a.height < two.b.height ? [two.a.at, two.b.at] : [two.b.at, two.a.at];
      const { pathDifference } = only(crossoverOf(two), driversOf(two), head);
      expect(pathDifference).toBeCloseTo(distance(lower, head) - distance(upper, head), 10);
      const renamed = only({ ...crossoverOf(two), between: two.swap ? ['a', 'b'] : ['b', 'a'] }, driversOf(two), head);
      expect(renamed.pathDifference).toBe(pathDifference);
    }),
    RUNS,
  );
});

test('of two drivers at one height, the second named counts as the lower one', () => {
  const drivers = [placed('near', 'midrange', 100, vec3(0, 0, 300)), placed('far', 'midrange', 100, vec3(0, 50, 300))];
  const head = vec3(0, -1000, 300);
  expect(only({ ...twoWay(1000), between: ['near', 'far'] }, drivers, head).pathDifference).toBeCloseTo(50, 12);
  expect(only({ ...twoWay(1000), between: ['far', 'near'] }, drivers, head).pathDifference).toBeCloseTo(-50, 12);
});

test('of two drivers of one role, the first named is the high-pass', () => {
  // A quarter of a wavelength: the high-pass lags by a quarter turn, so it is in phase when it stands that much nearer.
  const quarter = 343.2 / 4;
  const drivers = [placed('near', 'woofer', 200, vec3(0, 0, 0)), placed('far', 'woofer', 100, vec3(0, quarter, 0))];
  const head = vec3(0, -1000, 0);
  const crossover = twoWay(1000, 'quadrature');
  expect(only({ ...crossover, between: ['near', 'far'] }, drivers, head).sumLevel).toBeCloseTo(0, 10);
  expect(only({ ...crossover, between: ['far', 'near'] }, drivers, head).sumLevel).toBeNull();
});

test('phase is 2π times the path difference in wavelengths and does not wrap', () => {
  fc.assert(
    fc.property(pair, seat, numberFrom(300, 370), (two, head, speed) => {
      const { pathDifference, phase } = only(crossoverOf(two), driversOf(two), head, speed);
      const wavelength = (1000 * speed) / two.frequency;
      expect(phase / (2 * Math.PI)).toBeCloseTo(pathDifference / wavelength, 10);
    }),
    RUNS,
  );
  const far = only(twoWay(20000), towered(200), vec3(0, 0, 5000));
  expect(far.phase).toBeGreaterThan(20 * Math.PI);
});

test('mirroring the loudspeaker and the head changes nothing', () => {
  fc.assert(
    fc.property(pair, seat, (two, head) => {
      const mirrored = { ...two, a: { ...two.a, at: mirrorX(two.a.at) }, b: { ...two.b, at: mirrorX(two.b.at) } };
      const there = only(crossoverOf(two), driversOf(two), head);
      const here = only(crossoverOf(two), driversOf(mirrored), mirrorX(head));
      // As JSON, where 0 has no sign.
      expect(JSON.stringify(here)).toBe(JSON.stringify(there));
    }),
    RUNS,
  );
});

test('outright cancellation has no level, and just beside it there is one', () => {
  const half = 343.2 / 2;
  const drivers = (extra: number) => [
    placed('tweeter', 'tweeter', 200, vec3(0, 0, 0)),
    placed('woofer', 'woofer', 100, vec3(0, half + extra, 0)),
  ];
  const head = vec3(0, -1000, 0);
  // At 1 kHz a shift of e mm leaves a sum of πe/343.2.
  const limit = (CANCELLED * 343.2) / Math.PI;
  expect(only(twoWay(1000), drivers(0), head).sumLevel).toBeNull();
  expect(only(twoWay(1000), drivers(0.9 * limit), head).sumLevel).toBeNull();
  expect(only(twoWay(1000), drivers(1.1 * limit), head).sumLevel).toBeCloseTo(20 * Math.log10(1.1 * CANCELLED), 4);
});

describe('the crossovers of a loudspeaker', () => {
  const drivers = [...towered(150), placed('super', 'tweeter', 250, vec3(0, 0, 130))];
  const crossovers: Crossover[] = [
    twoWay(2500),
    { between: ['super', 'tweeter'], frequency: 8000, alignment: 'quadrature' },
  ];
  const head = vec3(0, -1000, 0);

  test('give one sum each, in order, and none give none', () => {
    const sums = crossoverSums(crossovers, drivers, null, head, SPEED);
    expect(sums.map(({ between, frequency }) => ({ between, frequency }))).toEqual([
      { between: ['tweeter', 'woofer'], frequency: 2500 },
      { between: ['super', 'tweeter'], frequency: 8000 },
    ]);
    expect(crossoverSums([], drivers, null, head, SPEED)).toEqual([]);
  });

  test('have a path that is geometry, and no sum where nobody said how the drivers were lined up', () => {
    fc.assert(
      fc.property(pair, seat, numberFrom(100, 5000), (two, at, distance) => {
        const all = driversOf(two);
        const [unknown] = crossoverSums([crossoverOf(two)], all, null, at, SPEED);
        const [known] = crossoverSums([crossoverOf(two)], all, { driver: 'a', distance }, at, SPEED);
        const { pathDifference, phase } = only(crossoverOf(two), all, at);
        expect(unknown).toMatchObject({ pathDifference, sumKnown: false, sumLevel: null });
        expect(known).toMatchObject({ pathDifference, sumKnown: true, phase: unknown?.phase });
        expect(unknown?.phase).toBeCloseTo(phase, 9);
      }),
    );
  });

  test('are 0 dB at the design point, whatever the paths to it', () => {
    fc.assert(
      fc.property(numberFrom(100, 5000), fc.constantFrom('in-phase', 'quadrature'), (distance, how) => {
        // Up the baffle the drivers stand at 200 and 50 mm; the tweeter's axis is the level line through it.
        const at = vec3(0, -distance, 75);
        const [sum] = crossoverSums([twoWay(2500, how)], towered(150), { driver: 'tweeter', distance }, at, SPEED);
        expect(sum?.sumLevel).toBeCloseTo(0, 9);
        expect(sum?.pathDifference).toBeCloseTo(Math.hypot(distance, 150) - distance, 9);
      }),
    );
  });

  test('name a driver that is not there', () => {
    const lost: Crossover = { ...twoWay(2500), between: ['tweeter', 'horn'] };
    expect(() => crossoverSums([lost], towered(150), null, head, SPEED)).toThrow(
      'the crossover names "horn", which is none of the drivers',
    );
    const nowhere = { driver: 'horn', distance: 1000 };
    expect(() => crossoverSums([twoWay(2500)], towered(150), nowhere, head, SPEED)).toThrow(
      'the design point names "horn", which is none of the drivers',
    );
  });
});
