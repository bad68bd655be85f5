import type { Point } from './point.ts';

/** The half axes of an ellipse and how far the longer one is turned from x towards y, radians, −π/2 up to π/2. */
export interface Ellipse {
  readonly major: number;
  readonly minor: number;
  readonly turn: number;
}

/** A point of two normal values lies within so many standard deviations in 95 % of cases: χ² of two is −2 ln 0.05. */
const K95 = Math.sqrt(-2 * Math.log(0.05));

/** A value anywhere within ± its span with equal chance has this share of the span as its standard deviation. GUM 4.3.7. */
const OF_SPAN = 1 / Math.sqrt(3);

/**
 * Where 95 % of points lie that are the sum of independent shifts, each anywhere from one end to the other of a line through
 * the middle with equal chance: by their covariance, as if normal.
 *
 * @param shifts The one end of each line, from the middle.
 */
export function spreadEllipse(shifts: readonly Point[]): Ellipse {
  const sum = (of: (shift: Point) => number): number => shifts.reduce((total, shift) => total + of(shift), 0);
  const [xx, xy, yy] = [sum(([x]) => x * x), sum(([x, y]) => x * y), sum(([, y]) => y * y)];
  const [middle, half] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
  const axis = (variance: number): number => K95 * OF_SPAN * Math.sqrt(Math.max(0, variance));
  return { major: axis(middle + half), minor: axis(middle - half), turn: Math.atan2(2 * xy, xx - yy) / 2 };
}
