import type { Vec3 } from '$lib/geometry/point.ts';
import { ANYWHERE, asLengths, asStanding, type Fitted } from './fitStanding.ts';
import { HALF_SPAN } from './reading.ts';
import { passOf, type Cabinet, type Standing } from './standing.ts';

/** Where the axis passes the head lies in this ellipse in 95 cases of a hundred, seen along the axis. mm and radians. */
export interface Ellipse {
  readonly major: number;
  readonly minor: number;
  /** From the right to the major axis, counter-clockwise as one sees it from the chair. */
  readonly turn: number;
}

/** Half of what holds 95 of a hundred; angles in radians. */
export interface Spread {
  readonly standing: Standing;
  readonly pass: Ellipse;
}

/** Standard deviations that hold 95 of a hundred points of a plane: √(−2 ln 0.05). */
const IN_A_PLANE = Math.sqrt(-2 * Math.log(0.05));

const NUDGE = 1e-3;

export function spreadOf(
  { standing, covariance }: Pick<Fitted, 'standing' | 'covariance'>,
  cabinet: Cabinet,
  head: Vec3,
): Spread {
  const rows = passSlopes(standing, cabinet, head);
  return {
    standing: asStanding(covariance.map((row, i) => HALF_SPAN * Math.sqrt(Math.max(0, row[i] ?? 0)))),
    pass: ellipseOf(rows, covariance),
  };
}

/** How the pass moves with each of the six numbers as lengths: to the right, and up. */
function passSlopes(standing: Standing, cabinet: Cabinet, head: Vec3): readonly [number[], number[]] {
  const values = asLengths(standing);
  const there = (i: number, way: 1 | -1) =>
    passOf(cabinet, asStanding(values.map((one, j) => (i === j ? one + way * NUDGE : one))), head);
  const pairs = values.map((_, i) => [there(i, -1), there(i, 1)] as const);
  return [
    pairs.map(([less, more]) => (more.right - less.right) / (2 * NUDGE)),
    pairs.map(([less, more]) => (more.over - less.over) / (2 * NUDGE)),
  ];
}

function ellipseOf([right, over]: readonly [number[], number[]], covariance: readonly (readonly number[])[]): Ellipse {
  const times = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, left, i) => sum + left * b.reduce((s, one, j) => s + (covariance[i]?.[j] ?? 0) * one, 0), 0);
  const [a, b, c] = [times(right, right), times(right, over), times(over, over)];
  const middle = (a + c) / 2;
  const apart = Math.hypot((a - c) / 2, b);
  return {
    major: IN_A_PLANE * Math.sqrt(middle + apart),
    minor: IN_A_PLANE * Math.sqrt(Math.max(0, middle - apart)),
    turn: Math.atan2(2 * b, a - c) / 2,
  };
}

/** Whether the readings say where the axis passes: the spread is far under what it was before anything was read. */
export const isKnown = ({ pass }: Spread): boolean => pass.major < (IN_A_PLANE * ANYWHERE) / 4;
