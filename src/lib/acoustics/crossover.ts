import type { Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover } from '$lib/project/project.ts';
import { filterLag } from './alignment.ts';
import { lowerAndUpper } from './pair.ts';
import { pathDifference } from './path.ts';

/** What reaches the head from the two drivers of a crossover, at its frequency. */
export interface CrossoverSum {
  readonly between: readonly [string, string];
  /** Hz. */
  readonly frequency: number;
  /** Acoustic centre to head: path of the lower driver less that of the upper one, mm. */
  readonly pathDifference: number;
  /** How far that path makes the lower driver lag, radians, unwrapped: 2π · frequency · path difference / c. */
  readonly phase: number;
  /** dB re the same two branches in phase, 0 or less; null where they cancel outright. */
  readonly sumLevel: number | null;
}

/**
 * The sum of two branches, as a fraction of their sum in phase, under which they count as cancelled outright: −120 dB,
 * about the whole span of hearing from threshold to pain. What is left cannot be heard at any level.
 */
export const CANCELLED = 1e-6;

/**
 * The sum at the head for each crossover of a loudspeaker, in the order given. `speed` is the speed of sound, m/s.
 *
 * The lower driver is the one with the smaller height along the baffle; of two at one height, the second that the
 * crossover names. The two branches count as equally strong at the head. In phase their sum is |cos(φ/2)|. In quadrature
 * the filter adds its own quarter turn to the phase φ of the path (`filterLag` gives its sign): no path difference leaves
 * −3.01 dB, and a woofer up to half a wave farther off than the tweeter above it sums louder than that. Subject:
 * S. H. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", JAES 24(1), 1976.
 *
 * Throws when a crossover names a driver that is not among `drivers`, which no parsed project does.
 */
export const crossoverSums = (
  crossovers: readonly Crossover[],
  drivers: readonly PlacedDriver[],
  head: Vec3,
  speed: number,
): CrossoverSum[] => crossovers.map((crossover) => crossoverSum(crossover, drivers, head, speed));

function crossoverSum(crossover: Crossover, drivers: readonly PlacedDriver[], head: Vec3, speed: number): CrossoverSum {
  const { between, frequency } = crossover;
  const [lower, upper] = lowerAndUpper(crossover, drivers);
  const difference = pathDifference(lower.acousticCentre, upper.acousticCentre, head);
  const phase = (2 * Math.PI * frequency * difference) / (1000 * speed);
  const lag = phase + filterLag(crossover, lower.driver, upper.driver);
  return { between, frequency, pathDifference: difference, phase, sumLevel: sumLevel(lag) };
}

/** Two equal branches `lag` radians apart, dB re in phase: 20·lg|cos(lag/2)|; null where they cancel. */
function sumLevel(lag: number): number | null {
  const magnitude = Math.abs(Math.cos(lag / 2));
  return magnitude < CANCELLED ? null : 20 * Math.log10(magnitude);
}
