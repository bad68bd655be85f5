import { degrees } from '$lib/geometry/angle.ts';
import { expectedOf, numbersOf, type Surroundings } from './reading.ts';
import { stood, type Cabinet, type Standing } from './standing.ts';
import type { Taken } from './taken.ts';

/** How one reading fits a standing. */
export interface ReadingResidual {
  readonly reading: Taken;
  /** Read less expected: mm, or degrees for an angle; two numbers for a place. */
  readonly off: readonly number[];
  /** The same over the reading's standard deviation. */
  readonly over: readonly number[];
}

const ANGLES: readonly Taken['what'][] = ['slope', 'lean', 'toe'];

export const residualsOf = (
  readings: readonly Taken[],
  cabinet: Cabinet,
  standing: Standing,
  around: Surroundings,
): readonly ReadingResidual[] => {
  const at = stood(cabinet, standing);
  return readings.map((reading) => {
    const { read, deviation } = numbersOf(reading);
    const expected = expectedOf(reading, cabinet, at, around);
    const off = read.map((one, k) => one - (expected[k] ?? NaN));
    return {
      reading,
      off: ANGLES.includes(reading.what) ? off.map(degrees) : off,
      over: off.map((one) => one / deviation),
    };
  });
};
