import { degrees } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reverse } from './paperVector.ts';

/**
 * A line this nearly plumb is read from the right whichever way it leans, so that a float's last digit cannot turn its
 * number round. Sine of the angle: half a degree.
 */
const PLUMB = Math.sin(Math.PI / 360);

/**
 * The way along a line (paper unit vector, y down) in which a text on it reads from the bottom or from the right of the
 * sheet: to the right, and upwards where the line is plumb. Never upside down.
 */
export function readingWay(way: Point): Point {
  const [x, y] = way;
  if (Math.abs(x) <= PLUMB) return y > 0 ? reverse(way) : way;
  return x < 0 ? reverse(way) : way;
}

/** Degrees clockwise on the paper that turn a text into the way, −90.5 to 89.5. */
export const turnOf = ([x, y]: Point): number => degrees(Math.atan2(y, x)) + 0;
