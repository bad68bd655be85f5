import { radians } from '$lib/geometry/angle.ts';
import { levenbergMarquardt, type LeastSquaresFit } from './levenbergMarquardt.ts';
import { HALF_SPAN, expectedOf, numbersOf, type Surroundings } from './reading.ts';
import { stood, type Cabinet, type Standing } from './standing.ts';
import type { Taken } from './taken.ts';

/** Unknowns as lengths: an angle counts as what it moves at half a metre, so that all six are of like size. mm. */
const LEVER = 500;

/**
 * Before anything is read, a cabinet may stand anywhere within a good metre of its plan: so wide that it takes part in nothing
 * that the readings tell, and holds what they do not. mm, a standard deviation.
 */
export const ANYWHERE = 1000;

/** A stand that nobody has read from side to side counts as level within this: common practice, no source. */
const LEVEL_WITHIN = radians(0.5);

const NUDGE = 1e-3;

/** Several readings and how the cabinet stands by them. */
export interface Fitted {
  readonly standing: Standing;
  /** Covariance of what `asLengths` makes of the standing, mm². */
  readonly covariance: readonly (readonly number[])[];
  /** Sum of the squares of the readings' residuals, each over its standard deviation. */
  readonly chiSquared: number;
  /** Of each reading: read less expected, over the standard deviation, one or two numbers. */
  readonly over: readonly (readonly number[])[];
  /** How many of the readings' numbers are more than it takes: nothing can contradict where this is 0. */
  readonly spare: number;
  /** Whether the roll was taken as none. */
  readonly levelTaken: boolean;
}

export const asLengths = ({ x, y, front, toe, tilt, roll }: Standing): readonly number[] => [
  x,
  y,
  front,
  toe * LEVER,
  tilt * LEVER,
  roll * LEVER,
];

export const asStanding = (values: readonly number[]): Standing => {
  const [x = 0, y = 0, front = 0, toe = 0, tilt = 0, roll = 0] = values;
  return { x, y, front, toe: toe / LEVER, tilt: tilt / LEVER, roll: roll / LEVER };
};

/** Whether any reading says how the cabinet is from side to side. */
const tellsRoll = (readings: readonly Taken[]): boolean =>
  readings.some(({ what }) => what === 'inboard-height' || what === 'outboard-height');

/**
 * How a cabinet stands by its readings: weighted least squares over the six numbers, each reading by its own doubt, begun
 * from the plan. What no reading tells stays where the plan has it, with a spread as wide as `ANYWHERE`.
 *
 * @returns Null when a reading cannot be reckoned with at all from the plan, such as a light that points away.
 */
export function fitStanding(
  readings: readonly Taken[],
  cabinet: Cabinet,
  planned: Standing,
  around: Surroundings,
): Fitted | null {
  const start = asLengths(planned);
  const levelTaken = !tellsRoll(readings);
  const numbers = readings.map(numbersOf);
  const overOf = (standing: Standing): number[][] => {
    const at = stood(cabinet, standing);
    return readings.map((reading, i) => {
      const { read = [], deviation = 1 } = numbers[i] ?? {};
      const expected = expectedOf(reading, cabinet, at, around);
      return read.map((one, k) => (one - (expected[k] ?? NaN)) / deviation);
    });
  };
  const held = (values: readonly number[]): number[] => [
    ...values.map((value, i) => (value - (start[i] ?? 0)) / ANYWHERE),
    ...(levelTaken ? [asStanding(values).roll / (LEVEL_WITHIN / HALF_SPAN)] : []),
  ];
  const fit = levenbergMarquardt(
    (values) => [...overOf(asStanding(values)).flat(), ...held(values)],
    start,
    start.map(() => NUDGE),
  );
  if (!fit) return null;
  const standing = asStanding(fit.values);
  const over = overOf(standing);
  const count = over.flat().length;
  return {
    standing,
    covariance: fit.covariance,
    chiSquared: over.flat().reduce((sum, one) => sum + one * one, 0),
    over,
    spare: Math.max(0, Math.round(count - told(fit, count))),
    levelTaken,
  };
}

/**
 * The covariance with one more reading that agrees with the standing, as a fit with it would have it: each of its numbers adds
 * a row to what is known, by J. Sherman and W. J. Morrison's formula, Ann. Math. Stat. 21 (1950).
 */
export function covarianceWith(
  { standing, covariance, levelTaken }: Fitted,
  reading: Taken,
  cabinet: Cabinet,
  around: Surroundings,
): Fitted['covariance'] {
  const { deviation } = numbersOf(reading);
  const values = asLengths(standing);
  const at = (i: number, way: 1 | -1): readonly number[] => {
    const nudged = values.map((one, j) => (i === j ? one + way * NUDGE : one));
    return expectedOf(reading, cabinet, stood(cabinet, asStanding(nudged)), around);
  };
  const ends = values.map((_, i) => [at(i, 1), at(i, -1)] as const);
  const rows = (ends[0]?.[0] ?? []).map((_, k) =>
    ends.map(([more, less]) => ((more[k] ?? NaN) - (less[k] ?? NaN)) / (2 * NUDGE * deviation)),
  );
  const known = rows.reduce((done, row) => withRow(done, row, 1), covariance);
  // What was taken as level has now been read.
  return levelTaken && tellsRoll([reading]) ? withRow(known, LEVEL_ROW, -1) : known;
}

const LEVEL_ROW: readonly number[] = [0, 0, 0, 0, 0, HALF_SPAN / (LEVEL_WITHIN * LEVER)];

/** The inverse of what was inverted with a row's square added to it, or taken off. */
function withRow(covariance: Fitted['covariance'], row: readonly number[], sign: 1 | -1): Fitted['covariance'] {
  const times = covariance.map((line) => line.reduce((sum, one, j) => sum + one * (row[j] ?? 0), 0));
  const over = 1 + sign * times.reduce((sum, one, j) => sum + one * (row[j] ?? 0), 0);
  return covariance.map((line, i) => line.map((one, j) => one - (sign * (times[i] ?? 0) * (times[j] ?? 0)) / over));
}

/** How many of the unknowns the first so many residuals tell: the trace of what they project on. */
function told({ slopes, covariance }: LeastSquaresFit, count: number): number {
  return slopes
    .slice(0, count)
    .reduce(
      (sum, row) =>
        sum +
        row.reduce((a, left, i) => a + left * row.reduce((b, right, j) => b + (covariance[i]?.[j] ?? 0) * right, 0), 0),
      0,
    );
}
