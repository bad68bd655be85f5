import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import type { Board, Sanding } from '$lib/stand/body.ts';
import type { Ground, Section } from '$lib/stand/ground.ts';
import type { Lump } from '$lib/stand/lumps.ts';
import type { Shape } from '$lib/stand/shape.ts';
import { SAME } from './same.ts';

/** What is cut between two places across a stand, mm from its middle, positive outboard. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Whether one section does for a whole width: the top does not fall to a side. */
export const isAlike = ({ slope }: Ground, width: number): boolean => Math.abs(slope.across) * width <= SAME;

/** The lowest section of a width. */
export const lowestSection = ({ slope, section }: Ground, width: number): Section =>
  section(slope.across > 0 ? -width / 2 : slope.across < 0 ? width / 2 : 0);

/**
 * A layer as it ends up, sanded to the slope: what it was cut to, less what its cut section has over the one halfway
 * through it.
 */
export function sandedLump(
  ground: Ground,
  { from, to }: Stretch,
  { thickness, density }: Board,
  quantity: number,
  { area, centre }: Shape,
): Lump {
  const across = (from + to) / 2;
  const thick = thickness * quantity;
  const [cut, left] = [ground.layer(from, to), ground.section(across)];
  if (cut === left) return { volume: area * thick, density, at: ground.at(across, ...centre) };
  const [whole, sanded] = [cut, left].map(({ slice }) => momentsOf(polygonPath(slice)));
  if (!whole || !sanded) throw new Error('two sections have two areas');
  const rest = area - whole.area + sanded.area;
  const middle = (axis: 0 | 1): number =>
    (area * centre[axis] - whole.area * whole.centre[axis] + sanded.area * sanded.centre[axis]) / rest;
  return { volume: rest * thick, density, at: ground.at(across, middle(0), middle(1)) };
}

/** What is to be sanded off from one layer to the next; null where the top does not fall to a side. */
export function sandingOf({ slope }: Ground, pitch: number): Sanding | null {
  const height = Math.abs(slope.across) * pitch;
  return height <= SAME ? null : { height, face: slope.across > 0 ? 'outboard' : 'inboard' };
}
