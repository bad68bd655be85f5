import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meetingOf, relativeDifference, sumLevelAt, sumRatio } from '$lib/acoustics/driversMeet.ts';
import { lobeOf } from '$lib/acoustics/lobe.ts';
import { along, distance, dot, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover } from '$lib/project/project.ts';
import { numberFrom } from '../numbers.ts';
import { asTheyStand, placed, pointIn, towered, twoWay } from './placed.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(300) };
const SPEED = 343.2;
const AXIS = vec3(0, -1, 0);

const cross = fc.record({
  apart: numberFrom(40, 400),
  deep: numberFrom(-30, 60),
  frequency: numberFrom(300, 6000),
  alignment: fc.constantFrom('in-phase', 'quadrature'),
  distance: numberFrom(300, 4000),
});
type Cross = typeof cross extends fc.Arbitrary<infer Value> ? Value : never;

const seat = pointIn([-300, 300], [-2500, -400], [-500, 500]);
const driversOf = ({ apart, deep }: Cross): readonly PlacedDriver[] => [
  placed('tweeter', 'tweeter', 200 + apart, vec3(0, 0, apart / 2)),
  {
    ...placed('woofer', 'woofer', 200, vec3(0, deep, -apart / 2)),
    driver: { ...placed('woofer', 'woofer', 200, AXIS).driver, acousticDepth: deep },
  },
];
const crossing = (two: Cross): Crossover => twoWay(two.frequency, two.alignment);
const meeting = (two: Cross, designed: boolean) =>
  designed
    ? meetingOf(crossing(two), driversOf(two), { driver: 'tweeter', distance: two.distance }, SPEED)
    : asTheyStand(crossing(two), driversOf(two), SPEED);

describe('with a design point', () => {
  test('the drivers are in step there, whatever their depths', () => {
    fc.assert(
      fc.property(cross, (two) => {
        // On the tweeter's axis, so far from the baffle.
        const point = vec3(0, -two.distance, two.apart / 2);
        expect(Math.abs(relativeDifference(meeting(two, true), point))).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  test('elsewhere they are apart by the path less that of the design point', () => {
    fc.assert(
      fc.property(cross, seat, (two, head) => {
        const [tweeter, woofer] = driversOf(two).map(({ acousticCentre }) => acousticCentre);
        if (!tweeter || !woofer) throw new Error('two drivers');
        const point = vec3(0, -two.distance, two.apart / 2);
        const plain = (at: Vec3): number => distance(woofer, at) - distance(tweeter, at);
        expect(relativeDifference(meeting(two, true), head)).toBeCloseTo(plain(head) - plain(point), 8);
        expect(relativeDifference(meeting(two, false), head)).toBeCloseTo(plain(head), 8);
      }),
      RUNS,
    );
  });
});

test('lined up the sum is 0 dB; in quadrature it can reach 3.01 dB over that and no more', () => {
  fc.assert(
    fc.property(cross, numberFrom(-20, 20), (two, phase) => {
      const it = meeting(two, false);
      expect(sumLevelAt(it, 0)).toBeCloseTo(0, 12);
      expect(sumRatio(it, phase)).toBeLessThanOrEqual((two.alignment === 'quadrature' ? Math.SQRT2 : 1) + 1e-12);
    }),
    RUNS,
  );
});

describe('the lobe', () => {
  const levelAt = (two: Cross, designed: boolean, angle: number, head: Vec3): number => {
    const it = meeting(two, designed);
    const lobe = lobeOf(it, AXIS, head);
    if (!lobe) throw new Error('a lobe');
    const { centre, forward, upward, radius } = lobe;
    const at = along(along(centre, forward, radius * Math.cos(angle)), upward, radius * Math.sin(angle));
    return sumRatio(it, relativeDifference(it, at) * it.perMillimetre);
  };

  test('is half the power at its half-power points and silent at its nulls, one on each side of the ear', () => {
    let seen = 0;
    fc.assert(
      fc.property(cross, seat, fc.boolean(), (two, head, designed) => {
        const lobe = lobeOf(meeting(two, designed), AXIS, head);
        if (!lobe) throw new Error('a lobe');
        for (const [bounds, ratio] of [
          [lobe.halfPower, Math.SQRT1_2],
          [lobe.nulls, 0],
        ] as const) {
          for (const [angle, way] of [
            [bounds.below, -1],
            [bounds.above, 1],
          ] as const) {
            if (angle === null) continue;
            seen++;
            expect(levelAt(two, designed, angle, head)).toBeCloseTo(ratio, 7);
            expect(way * (angle - lobe.ear)).toBeGreaterThan(-1e-9);
          }
        }
      }),
      RUNS,
    );
    expect(seen).toBeGreaterThan(RUNS.numRuns);
  });

  test('has no null nearer to the ear than those it names: a walk of small steps meets none', () => {
    fc.assert(
      fc.property(cross, seat, (two, head) => {
        const lobe = lobeOf(meeting(two, false), AXIS, head);
        if (!lobe) throw new Error('a lobe');
        const low = (lobe.nulls.below ?? -Math.PI / 2) + 1e-6;
        const high = (lobe.nulls.above ?? Math.PI / 2) - 1e-6;
        fc.pre(low < lobe.ear && lobe.ear < high);
        const lag = (angle: number): number => {
          const at = along(
            along(lobe.centre, AXIS, lobe.radius * Math.cos(angle)),
            lobe.upward,
            lobe.radius * Math.sin(angle),
          );
          const it = meeting(two, false);
          return relativeDifference(it, at) * it.perMillimetre + it.filterLag;
        };
        const turnOf = (angle: number): number => Math.round(lag(angle) / (2 * Math.PI)) + 0;
        for (let i = 0; i <= 180; i++) expect(turnOf(low + ((high - low) * i) / 180)).toBe(turnOf(lobe.ear));
      }),
      RUNS,
    );
  });

  test('its curve has a point a degree and is the sum at each', () => {
    const two: Cross = { apart: 120, deep: 20, frequency: 2800, alignment: 'in-phase', distance: 1000 };
    const head = vec3(0, -900, 40);
    const lobe = lobeOf(meeting(two, true), AXIS, head);
    expect(lobe?.angles).toHaveLength(181);
    expect([lobe?.angles[0], lobe?.angles[90], lobe?.angles[180]]).toEqual([-Math.PI / 2, 0, Math.PI / 2]);
    lobe?.levels.forEach((level, i) => {
      const ratio = levelAt(two, true, lobe.angles[i] ?? NaN, head);
      expect(level).toBeCloseTo(Math.max(20 * Math.log10(ratio), -60), 6);
    });
  });

  test('its plane holds the axis and both centres, and up is towards the upper driver', () => {
    fc.assert(
      fc.property(cross, seat, (two, head) => {
        const it = meeting(two, false);
        const lobe = lobeOf(it, AXIS, head);
        if (!lobe) throw new Error('a lobe');
        expect(Math.abs(dot(lobe.upward, AXIS))).toBeLessThan(1e-12);
        expect(dot(lobe.upward, vec3(0, 0, 1))).toBeCloseTo(1, 12);
        expect(lobe.radius).toBeCloseTo(distance(lobe.centre, head), 12);
      }),
      RUNS,
    );
  });

  test('there is none for drivers one behind the other', () => {
    const coaxial = [placed('tweeter', 'tweeter', 200, vec3(0, 0, 0)), placed('woofer', 'woofer', 200, vec3(0, 30, 0))];
    expect(lobeOf(asTheyStand(twoWay(2000), coaxial, SPEED), AXIS, vec3(0, -900, 0))).toBeNull();
  });
});

// Worked out from d·sin θ for a distant ear, after S. H. Linkwitz, "Active Crossover Networks for Noncoincident Drivers",
// JAES 24(1), 1976 (the subject).
test('drivers 150 mm apart at 2500 Hz, from far away: half power at ±13.226°, nulls at ±27.232°', () => {
  const far = vec3(0, -1e8, 0);
  const lobe = lobeOf(asTheyStand(twoWay(2500), towered(150), SPEED), AXIS, far);
  const degrees = (angle: number | null | undefined): number => ((angle ?? NaN) * 180) / Math.PI;
  expect(degrees(lobe?.halfPower.above)).toBeCloseTo(13.226, 3);
  expect(degrees(lobe?.halfPower.below)).toBeCloseTo(-13.226, 3);
  expect(degrees(lobe?.nulls.above)).toBeCloseTo(27.232, 3);
  expect(degrees(lobe?.nulls.below)).toBeCloseTo(-27.232, 3);
});

test('in quadrature the same drivers are 1.9404 dB up at +5° and 3.5980 dB down at −5°', () => {
  const far = vec3(0, -1e8, 0);
  const it = asTheyStand(twoWay(2500, 'quadrature'), towered(150), SPEED);
  const lobe = lobeOf(it, AXIS, far);
  expect(lobe?.levels[95]).toBeCloseTo(1.9404, 3);
  expect(lobe?.levels[85]).toBeCloseTo(-3.598, 3);
});
