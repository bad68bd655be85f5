import type { Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover } from '$lib/project/project.ts';
import { filterLag } from './alignment.ts';
import { designDifference, type DesignPoint } from './designPoint.ts';
import { lowerAndUpper } from './pair.ts';
import { pathDifference } from './path.ts';

/**
 * The sum of two branches, as a fraction of their sum lined up, under which they count as cancelled outright: −120 dB,
 * about the whole span of hearing from threshold to pain. What is left cannot be heard at any level.
 */
export const CANCELLED = 1e-6;

/** The two drivers of a crossover, and how far apart they count as lined up. Lengths in mm, angles in radians. */
export interface Meeting {
  readonly crossover: Crossover;
  readonly lower: PlacedDriver;
  readonly upper: PlacedDriver;
  /** Path of the lower driver less that of the upper at the design point. */
  readonly design: number;
  /** How far the filter alone makes the lower driver's branch lag. */
  readonly filterLag: number;
  /** Radians of phase for each mm of path at the crossover frequency. */
  readonly perMillimetre: number;
}

/**
 * The drivers of a crossover and what sets their sum: where nobody said at which point they were lined up, there is no
 * meeting to judge. `speed` is the speed of sound, m/s. Throws as `lowerAndUpper` does.
 */
export function meetingOf(
  crossover: Crossover,
  drivers: readonly PlacedDriver[],
  point: DesignPoint,
  speed: number,
): Meeting {
  const [lower, upper] = lowerAndUpper(crossover, drivers);
  return {
    crossover,
    lower,
    upper,
    design: designDifference(
      lower.driver,
      upper.driver,
      drivers.map(({ driver }) => driver),
      point,
    ),
    filterLag: filterLag(crossover, lower.driver, upper.driver),
    perMillimetre: (2 * Math.PI * crossover.frequency) / (1000 * speed),
  };
}

/** Path of the lower driver less that of the upper at a point, less the same at the design point, mm. */
export const relativeDifference = ({ lower, upper, design }: Meeting, at: Vec3): number =>
  pathDifference(lower.acousticCentre, upper.acousticCentre, at) - design;

/**
 * The sum of two equally strong branches when the paths add `phase` radians to what the filters do, re the same two
 * lined up, as a ratio of pressures: |cos((φ + filter)/2)| over the same at φ = 0. In phase 0…1; in quadrature up to √2,
 * as a woofer up to half a wave farther off than the tweeter above it then makes up for the filter's own quarter turn.
 * Subject: S. H. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", JAES 24(1), 1976.
 */
export const sumRatio = ({ filterLag: lag }: Meeting, phase: number): number =>
  Math.abs(Math.cos((phase + lag) / 2)) / Math.cos(lag / 2);

/** `sumRatio` in dB; null where the two cancel outright. */
export function sumLevelAt(meeting: Meeting, phase: number): number | null {
  const ratio = sumRatio(meeting, phase);
  return ratio < CANCELLED ? null : 20 * Math.log10(ratio);
}

/** The same two drivers where they stand, crossed with another alignment. */
export function withAlignment(meeting: Meeting, alignment: Crossover['alignment']): Meeting {
  const crossover = { ...meeting.crossover, alignment };
  return { ...meeting, crossover, filterLag: filterLag(crossover, meeting.lower.driver, meeting.upper.driver) };
}
