import { degrees } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reverse } from './paperVector.ts';

/**
 * A line this near to plumb is read from the right whichever way it leans, as a sheet's reader tilts their head one way
 * only. Sine of the angle: 15°.
 */
const PLUMB = Math.sin(Math.PI / 12);

/**
 * The way along a line (paper unit vector, y down) in which a text on it reads from the bottom or from the right of the
 * sheet: to the right, and upwards where the line is near to plumb. Never upside down.
 */
export function readingWay(way: Point): Point {
  const [x, y] = way;
  if (Math.abs(x) <= PLUMB) return y > 0 ? reverse(way) : way;
  return x < 0 ? reverse(way) : way;
}

/** Degrees clockwise on the paper that turn a level text into the way. */
export const turnOf = ([x, y]: Point): number => degrees(Math.atan2(y, x)) + 0;
