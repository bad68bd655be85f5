import { momentsOf } from '$lib/geometry/moments.ts';
import { partBeyond } from '$lib/geometry/partBeyond.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Board, Sanding } from '$lib/stand/body.ts';
import type { StandSurface, Section } from '$lib/stand/standSurface.ts';
import type { PointMass } from '$lib/stand/pointMasses.ts';
import type { Shape } from '$lib/stand/shape.ts';
import { SAME } from './same.ts';

/** What is cut between two places across a stand, mm from its middle, positive outboard. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Whether one section does for a whole width: the top does not fall to a side. */
export const isAlike = ({ slope }: StandSurface, width: number): boolean => Math.abs(slope.across) * width <= SAME;

/** The lowest section of a width. */
export const lowestSection = ({ slope, section }: StandSurface, width: number): Section =>
  section(slope.across > 0 ? -width / 2 : slope.across < 0 ? width / 2 : 0);

/**
 * A layer as it ends up, sanded to the slope: what it was cut to, less what stands over the slope. That falls evenly from one
 * face to the other, so of a place in the section goes as large a share as it is high over the slope at the lower face, in
 * shares of the drop.
 */
export function sandedMass(
  surface: StandSurface,
  { from, to }: Stretch,
  { thickness, density }: Board,
  quantity: number,
  { outside, area, centre }: Pick<Shape, 'outside' | 'area' | 'centre'>,
): PointMass {
  const across = (from + to) / 2;
  const thick = thickness * quantity;
  const drop = Math.abs(surface.slope.across) * (to - from);
  const low = surface.slope.across > 0 ? from : to;
  const [, , [rear] = [0], [front] = [0]] = surface.section(low).core;
  const slope = (u: number): Point => [u, surface.top(low, u)];
  const over = drop <= SAME ? null : partBeyond(outside, slope(front), slope(rear));
  if (!over) return { volume: area * thick, density, at: surface.at(across, ...centre) };
  const strip = momentsOf(over);
  const high = strip.centre[1] - surface.top(low, strip.centre[0]);
  const gone = (strip.area * high) / drop;
  // Heights that weigh by themselves have their middle a third higher, where the strip is evenly high.
  const goneAt: Point = [strip.centre[0], strip.centre[1] + high / 3];
  const rest = area - gone;
  const middle = (axis: 0 | 1): number => (area * centre[axis] - gone * goneAt[axis]) / rest;
  return { volume: rest * thick, density, at: surface.at(across, middle(0), middle(1)) };
}

/** What is to be sanded off from one layer to the next; null where the top does not fall to a side. */
export function sandingOf({ slope }: StandSurface, pitch: number): Sanding | null {
  const height = Math.abs(slope.across) * pitch;
  return height <= SAME ? null : { height, face: slope.across > 0 ? 'outboard' : 'inboard' };
}
