import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bandsOf } from '$lib/acoustics/bands.ts';
import { branches } from '$lib/acoustics/branches.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { reflectionsOf } from '$lib/acoustics/reflection.ts';
import { angleBetween, distance, mirrorX, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Crossover, Driver } from '$lib/project/project.ts';
import { minimise } from '../minimise.ts';
import { numberFrom } from '../numbers.ts';
import { placed, pointIn, reflections, twoWay, walledDesk, wideDesk, type Walled } from './placed.ts';
import { runs } from '../runs.ts';

type Reflection = ReturnType<typeof reflections>[number];

const RUNS = { numRuns: runs(1000) };
const SPEED = 343.2;

const desk: fc.Arbitrary<Walled> = fc
  .tuple(numberFrom(400, 3000), numberFrom(300, 1500), numberFrom(500, 1200), numberFrom(0, 2000))
  .map((sizes) => walledDesk(...sizes));
/** Over the desk's top and in front of its wall, whatever the desk. */
const overDesk = pointIn([-2000, 2000], [-2000, 300], [0, 1200]);
const somewhere = pointIn([-2000, 2000], [-2000, 4000], [-1200, 1200]);
const apart = (a: Vec3, b: Vec3): boolean => distance(a, b) > 1;

/** A path of metres by way of a point, rounded a few times. */
const PATH_ROUNDING = 1e-11;

/** Directions from a point rounded at 1e-12 mm to one at least 1 mm away. */
const ANGLE_ROUNDING = 1e-11;

const bySurface = (desk: Walled, source: Vec3, head: Vec3): readonly [Reflection, Reflection] => {
  const [top, wall, ...more] = reflections(desk, source, head, SPEED);
  if (!top || !wall || more.length > 0) throw new Error('expected the desk and the wall');
  expect([top.surface, wall.surface]).toEqual(['desk', 'wall:behind']);
  return [top, wall];
};

const detour = (source: Vec3, point: Vec3, head: Vec3): number =>
  distance(source, point) + distance(point, head) - distance(source, head);

test('the path runs over a point in the plane and is as long as it says', () => {
  fc.assert(
    fc.property(desk, overDesk, overDesk, (desk, source, head) => {
      fc.pre(apart(source, head));
      const [top, wall] = bySurface(desk, source, head);
      expect(top.point.z).toBeCloseTo(0, 11);
      expect(wall.point.y).toBeCloseTo(desk.wall ?? NaN, 11);
      for (const { point, pathDifference } of [top, wall]) {
        expect(Math.abs(detour(source, point, head) - pathDifference)).toBeLessThan(PATH_ROUNDING);
      }
    }),
    RUNS,
  );
});

test('arrives and leaves at the same angle, in one plane with the normal', () => {
  const inside = pointIn([-2000, 2000], [-2000, 299], [1, 1200]);
  fc.assert(
    fc.property(desk, inside, inside, (desk, source, head) => {
      fc.pre(apart(source, head));
      const [top, wall] = bySurface(desk, source, head);
      const cases = [
        [top.point, vec3(0, 0, 1)],
        [wall.point, vec3(0, -1, 0)],
      ] as const;
      for (const [point, normal] of cases) {
        const arriving = angleBetween(subtract(source, point), normal);
        const leaving = angleBetween(subtract(head, point), normal);
        expect(Math.abs(arriving - leaving)).toBeLessThan(ANGLE_ROUNDING);
        const between = angleBetween(subtract(source, point), subtract(head, point));
        expect(Math.abs(between - arriving - leaving)).toBeLessThan(ANGLE_ROUNDING);
      }
    }),
    RUNS,
  );
});

const heardOf = ({ pathDifference, delay, relativeLevel, firstNotch }: Reflection) => ({
  pathDifference,
  delay,
  relativeLevel,
  firstNotch,
});

test('source and head may change places', () => {
  fc.assert(
    fc.property(desk, overDesk, overDesk, (desk, source, head) => {
      fc.pre(apart(source, head));
      const there = bySurface(desk, source, head);
      const back = bySurface(desk, head, source);
      for (const side of [0, 1] as const) {
        expect(distance(there[side].point, back[side].point)).toBeLessThan(PATH_ROUNDING);
        expect(heardOf(back[side])).toEqual(heardOf(there[side]));
      }
    }),
    RUNS,
  );
});

test('mirrored in x, everything is mirrored', () => {
  // As JSON, where 0 has no sign.
  const written = (list: readonly Reflection[]): string => JSON.stringify(list);
  const turned = (one: Reflection): Reflection => ({ ...one, point: mirrorX(one.point) });
  fc.assert(
    fc.property(desk, somewhere, somewhere, (desk, source, head) => {
      const there = reflections(desk, source, head, SPEED);
      const mirrored = reflections(desk, mirrorX(source), mirrorX(head), SPEED);
      expect(written(mirrored)).toBe(written(there.map(turned)));
    }),
    RUNS,
  );
});

test('never louder nor earlier than the direct sound, and every number is finite', () => {
  const awkward = fc.constantFrom(0, -0, Number.MIN_VALUE, 1e-300, 1e-160, 1e-9, 1, 700);
  const corner = fc.tuple(awkward, awkward, awkward).map(([x, y, z]) => vec3(x, y, z));
  fc.assert(
    fc.property(desk, fc.oneof(corner, somewhere), fc.oneof(corner, somewhere), (desk, source, head) => {
      for (const one of reflections(desk, source, head, SPEED)) {
        const { x, y, z } = one.point;
        const numbers = [x, y, z, one.pathDifference, one.delay, one.relativeLevel, one.firstNotch ?? 0];
        expect(numbers.every(Number.isFinite)).toBe(true);
        expect(one.relativeLevel).toBeLessThanOrEqual(0);
        expect(one.delay).toBeGreaterThanOrEqual(0);
      }
    }),
    RUNS,
  );
});

test('no way over the plane is shorter: a general minimiser finds the same path', () => {
  fc.assert(
    fc.property(
      desk,
      pointIn([-800, 800], [0, 290], [50, 600]),
      pointIn([-800, 800], [-1500, -100], [100, 700]),
      (desk, source, head) => {
        const [top, wall] = bySurface(desk, source, head);
        const direct = distance(source, head);
        for (const { surface, point, pathDifference } of [top, wall]) {
          const onPlane = (at: readonly number[]): Vec3 => {
            const [x = NaN, other = NaN] = at;
            return surface === 'desk' ? vec3(x, other, 0) : vec3(x, desk.wall ?? NaN, other);
          };
          const way = (at: readonly number[]): number => distance(source, onPlane(at)) + distance(onPlane(at), head);
          const { x, fx } = minimise(way, [100, 100]);
          expect(Math.abs(fx - direct - pathDifference)).toBeLessThan(1e-8);
          // The path is flat about its least: its rounding of 1e-12 mm leaves the point open by some 1e-5 mm.
          expect(distance(onPlane(x), point)).toBeLessThan(1e-3);
        }
      },
    ),
    { numRuns: runs(100) },
  );
});

test('two equal waves arrive opposed at the first notch', () => {
  fc.assert(
    fc.property(desk, overDesk, overDesk, (desk, source, head) => {
      for (const { pathDifference, delay, firstNotch } of reflections(desk, source, head, SPEED)) {
        if (firstNotch === null) continue;
        expect((2 * Math.PI * firstNotch * pathDifference) / (1000 * SPEED)).toBeCloseTo(Math.PI, 12);
        expect(2 * firstNotch * (delay / 1000)).toBeCloseTo(1, 12);
      }
    }),
    RUNS,
  );
});

test('keeps the digits of a path that is hardly longer', () => {
  // 1e-6 mm over the desk at both ends, a metre apart: Δ = 4h²/(2r), far below what two lengths of a metre would leave.
  const [top] = reflections(wideDesk(), vec3(0, 1000, 1e-6), vec3(0, 0, 1e-6), SPEED);
  expect((top?.pathDifference ?? NaN) / 2e-15).toBeCloseTo(1, 12);
});

test('the desk is there on its rectangle, edges included', () => {
  const desk = walledDesk(1000, 600, 735, null);
  // Equal heights: the point is halfway.
  const lands = (x: number, y: number): boolean | undefined =>
    reflections(desk, vec3(x, y + 500, 300), vec3(x, y - 500, 300), SPEED)[0]?.lands;
  expect([lands(0, 300), lands(500, 0), lands(-500, 600)]).toEqual([true, true, true]);
  expect([lands(500.01, 300), lands(-500.01, 300), lands(0, -0.01), lands(0, 600.01)]).toEqual([
    false,
    false,
    false,
    false,
  ]);
});

test('the wall is there down to the floor', () => {
  const desk = walledDesk(1000, 600, 735, 100);
  const lands = (z: number): boolean | undefined =>
    reflections(desk, vec3(0, 300, z + 50), vec3(0, 300, z - 50), SPEED).find(
      ({ surface }) => surface === 'wall:behind',
    )?.lands;
  expect([lands(300), lands(-735), lands(-735.01)]).toEqual([true, true, false]);
});

test('a surface with the source or the head on its wrong side gives nothing', () => {
  const names = (source: Vec3, head: Vec3, desk = wideDesk(100)) =>
    reflections(desk, source, head, SPEED).map(({ surface }) => surface);
  const over = vec3(0, 300, 200);
  expect(names(over, vec3(0, -300, 400))).toEqual(['desk', 'wall:behind']);
  expect(names(over, vec3(0, -300, -1))).toEqual(['wall:behind']);
  expect(names(vec3(0, 300, -1), vec3(0, -300, 400))).toEqual(['wall:behind']);
  expect(names(vec3(0, 5101, 200), vec3(0, -300, 400))).toEqual(['desk']);
  expect(names(over, vec3(0, 5101, 400))).toEqual(['desk']);
  expect(names(over, vec3(0, -300, 400), wideDesk(null))).toEqual(['desk']);
  expect(names(over, over)).toEqual([]);
});

test('along the surface itself the paths are equal and there is no notch', () => {
  const [top] = reflections(wideDesk(), vec3(0, 300, 0), vec3(200, 100, 0), SPEED);
  expect(top).toMatchObject({ point: { x: 100, y: 200, z: 0 }, pathDifference: 0, delay: 0, firstNotch: null });
  expect(top?.relativeLevel).toBeCloseTo(0, 15);
  const [atSource] = reflections(wideDesk(), vec3(0, 300, 0), vec3(200, 100, 400), SPEED);
  expect(atSource).toMatchObject({ point: { x: 0, y: 300, z: 0 }, firstNotch: null });
});

const driverOf = (name: string, role: Driver['role'], height: number): Driver =>
  placed(name, role, height, vec3(0, 0, 0)).driver;
const threeWay = [
  driverOf('tweeter', 'tweeter', 300),
  driverOf('mid', 'midrange', 200),
  driverOf('woofer', 'woofer', 90),
];
const twoCrossovers: readonly Crossover[] = [
  { ...twoWay(3000), between: ['tweeter', 'mid'] },
  { ...twoWay(400, 'quadrature'), between: ['mid', 'woofer'] },
];

test('a driver’s band runs from crossover to crossover, where its own branch is as loud as its neighbour’s', () => {
  const bands = bandsOf(threeWay, twoCrossovers);
  expect(bands.map(({ low }) => low)).toEqual([3000, 400, 20]);
  expect(bands.map(({ high }) => high)).toEqual([frequencies.at(-1), 3000, 400]);
  expect(bandsOf(threeWay, [])).toEqual(threeWay.map(() => ({ low: 20, high: frequencies.at(-1) })));
  // Linkwitz-Riley: each branch 6.02 dB down at the crossover (computed with scipy.signal); 1/48 octave of grid from it.
  const [tweeter, mid] = branches(threeWay, twoCrossovers);
  const place = frequencies.findIndex((f) => f >= 3000);
  const level = (one: typeof mid): number => 20 * Math.log10(Math.hypot(one?.re[place] ?? 0, one?.im[place] ?? 0));
  expect(Math.abs(level(tweeter) + 6.02)).toBeLessThan(0.3);
  expect(Math.abs(level(mid) + 6.02)).toBeLessThan(0.3);
});

test('notches are the lowest odd multiples of c/2Δ that the driver plays, and no others', () => {
  let found = 0;
  fc.assert(
    fc.property(numberFrom(20, 20000), numberFrom(20, 20000), numberFrom(1, 3000), (a, b, excess) => {
      const band = { low: Math.min(a, b), high: Math.max(a, b) };
      const way = { surface: 0, driver: 0, direct: 800, length: 800 + excess, excess, point: vec3(0, 0, 0) };
      const arrival = { ...way, lands: true, leaving: 0, screen: null, kept: 1 };
      const plane = { through: vec3(0, 0, 0), normal: vec3(0, 0, 1) };
      const desk = { name: 'desk' as const, plane, holds: () => true, plate: null, absorption: 0, monitor: null };
      const [one] = reflectionsOf([arrival], [desk], [band], SPEED);
      const all: number[] = [];
      for (let odd = 1; odd * 1000 * SPEED <= band.high * 2 * excess; odd += 2) {
        const frequency = (odd * 1000 * SPEED) / (2 * excess);
        if (frequency >= band.low) all.push(frequency);
      }
      found += all.length > 0 ? 1 : 0;
      expect(one?.notches.length).toBe(Math.min(3, all.length));
      one?.notches.forEach((notch, i) => expect(notch).toBeCloseTo(all[i] ?? NaN, 6));
    }),
    RUNS,
  );
  expect(found).toBeGreaterThan(10);
});
