import type { Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover } from '$lib/project/project.ts';
import type { DesignPoint } from './designPoint.ts';
import { meetingOf, relativeDifference, sumLevelAt } from './driversMeet.ts';
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
  /** Whether it is known where the drivers were lined up: without that nothing is known of their sum. */
  readonly sumKnown: boolean;
  /** dB re the same two drivers lined up, at most 0 in phase and 3.01 in quadrature; null where they cancel, or where it is not known. */
  readonly sumLevel: number | null;
}

/**
 * Each crossover of a loudspeaker at the head, in the order given. `speed` is the speed of sound, m/s.
 *
 * The paths are geometry. The sum is not: a maker's filters may make up for any difference of paths, so it is told only
 * where the project says at which point the drivers were lined up, and compared with that. The lower driver is the one
 * with the smaller height along the baffle; of two at one height, the second that the crossover names.
 *
 * Throws when a crossover names a driver that is not among `drivers`, which no parsed project does.
 */
export const crossoverSums = (
  crossovers: readonly Crossover[],
  drivers: readonly PlacedDriver[],
  point: DesignPoint | null,
  head: Vec3,
  speed: number,
): CrossoverSum[] =>
  crossovers.map((crossover) => {
    const { between, frequency } = crossover;
    const [lower, upper] = lowerAndUpper(crossover, drivers);
    const difference = pathDifference(lower.acousticCentre, upper.acousticCentre, head);
    const meeting = point && meetingOf(crossover, drivers, point, speed);
    return {
      between,
      frequency,
      pathDifference: difference,
      phase: (2 * Math.PI * frequency * difference) / (1000 * speed),
      sumKnown: meeting !== null,
      sumLevel: meeting && sumLevelAt(meeting, relativeDifference(meeting, head) * meeting.perMillimetre),
    };
  });
