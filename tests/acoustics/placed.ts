import fc from 'fast-check';
import { numberFrom } from '../numbers.ts';
import { rectangularDesk, wallAt } from '../rooms.ts';
import { distance, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { arrivalsOf } from '$lib/acoustics/arrivals.ts';
import { reflectionsOf } from '$lib/acoustics/reflection.ts';
import { surfacesAround } from '$lib/acoustics/surface.ts';
import { meetingOf, relativeDifference, sumLevelAt, type Meeting } from '$lib/acoustics/driversMeet.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover, Desk, Driver } from '$lib/project/project.ts';

/** A driver whose acoustic centre stands at a point; what the crossover does not look at is filled in plainly. */
export function placed(name: string, role: Driver['role'], height: number, acousticCentre: Vec3): PlacedDriver {
  const driver: Driver = { name, role, diameter: 25, radiating: null, height, offset: 0, acousticDepth: 0 };
  return { driver, position: acousticCentre, acousticCentre, distance: 0, offAxis: 0 };
}

/** A tweeter straight over a woofer, `apart` mm, their middle at the origin. */
export const towered = (apart: number): readonly PlacedDriver[] => [
  placed('tweeter', 'tweeter', 200, vec3(0, 0, apart / 2)),
  placed('woofer', 'woofer', 200 - apart, vec3(0, 0, -apart / 2)),
];

export const twoWay = (frequency: number, alignment: Crossover['alignment'] = 'in-phase'): Crossover => ({
  between: ['tweeter', 'woofer'],
  frequency,
  alignment,
});

/** Two drivers as a maker would have lined them up who made up for no path at all: what counts is how far off each is. */
export const asTheyStand = (crossover: Crossover, drivers: readonly PlacedDriver[], speed: number): Meeting => ({
  ...meetingOf(crossover, drivers, { driver: drivers[0]?.driver.name ?? '', distance: 1000 }, speed),
  design: 0,
});

/** Path, phase and level of such a sum at a head, the level re the two branches in phase; null where they cancel. */
export function sumAsTheyStand(crossover: Crossover, drivers: readonly PlacedDriver[], head: Vec3, speed: number) {
  const meeting = asTheyStand(crossover, drivers, speed);
  const pathDifference = relativeDifference(meeting, head);
  const phase = pathDifference * meeting.perMillimetre;
  const level = sumLevelAt(meeting, phase);
  const linedUp = 20 * Math.log10(Math.cos(meeting.filterLag / 2));
  return { pathDifference, phase, sumLevel: level === null ? null : level + linedUp };
}

/** A desk, and how far behind it a wall stands; null: none does. */
export interface Walled {
  readonly desk: Desk;
  readonly wall: number | null;
}

/** A desk that fills the room, with or without a wall behind it. */
export const wideDesk = (gap: number | null = null): Walled => walledDesk(10000, 5000, 740, gap);

export const walledDesk = (width: number, depth: number, height: number, gap: number | null): Walled => ({
  desk: rectangularDesk(width, depth, height),
  wall: gap === null ? null : depth + gap,
});

/** A point in a box, each side given as its least and greatest value, mm. */
export const pointIn = (
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
): fc.Arbitrary<Vec3> =>
  fc.tuple(numberFrom(...x), numberFrom(...y), numberFrom(...z)).map(([a, b, c]) => vec3(a, b, c));

/** What comes back of one full-range source to a head from a desk and the wall behind it, with nothing else in the room. */
export function reflections({ desk, wall }: Walled, source: Vec3, head: Vec3, speed: number) {
  const surfaces = surfacesAround({
    desk,
    room: { walls: wall === null ? [] : [wallAt('behind', 0, wall)], ceiling: null },
    monitors: [],
    surfaces: [],
  });
  const drivers = [{ ...placed('one', 'full-range', 200, source), distance: distance(source, head) }];
  const arrivals = arrivalsOf(drivers, vec3(0, -1, 0), surfaces, { screens: [], side: 'right' }, head);
  // A source that plays everything there is, so that its first notch is c/(2Δ) however long the detour.
  return reflectionsOf(arrivals, surfaces, [{ low: 0, high: Number.MAX_VALUE }], speed).map((one) => ({
    ...one,
    firstNotch: one.notches[0] ?? null,
  }));
}
