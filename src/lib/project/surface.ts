import type { Outline } from '$lib/geometry/gapWithin.ts';
import type { Point } from '$lib/geometry/point.ts';
import { deskShape } from './deskShape.ts';
import type { Layout, SideName, Surface } from './project.ts';
import { towards } from './wall.ts';

/** What a stand is on where that is no surface of the layout’s list; no surface is called so. */
export const DESK = 'desk';
export const FLOOR = 'floor';

/** What of a layout says where its surfaces are. */
export type Surfaced = Pick<Layout, 'desk' | 'surfaces' | 'placement'>;

/** The surface of the list that a loudspeaker's stand is on; null for the desk and the floor. */
function surfaceUnder({ surfaces, placement }: Surfaced, side: SideName): Surface | null {
  const { on } = placement[side];
  if (on === DESK || on === FLOOR) return null;
  const found = surfaces.find(({ name }) => name === on);
  if (!found) throw new Error(`The project was not checked: it has no surface "${on}".`);
  return found;
}

/** Height of what a stand is on over the desk's top, mm: 0 on the desk, negative under it. */
export function standsAt(layout: Surfaced, side: SideName): number {
  if (layout.placement[side].on === DESK) return 0;
  return (surfaceUnder(layout, side)?.height ?? 0) - layout.desk.height;
}

/** The edges of what a stand is on, from above; null for the floor, which has none. */
export function outlineUnder(layout: Surfaced, side: SideName): Outline | null {
  const { on } = layout.placement[side];
  if (on === DESK) return deskShape(layout.desk);
  const surface = surfaceUnder(layout, side);
  return surface && surfaceOutline(surface);
}

/** Its edges leave the corners in this order: front, right, back, left, as the surface is turned. */
export const surfaceOutline = (surface: Surface): Outline => ({ points: surfaceCorners(surface), convex: true });

/** The edges in that order. */
export const surfaceEdges = ['front', 'right', 'back', 'left'] as const;

/** Corners from above, desk frame, counter-clockwise from the front left. mm. */
export const surfaceCorners = ({ x, y, width, depth, turn }: Surface): Point[] =>
  cornersAbout([x, y], turn, [-width / 2, width / 2], [0, depth]);

/** Corners of the base of a riser or floor stand, its middle under the plate's; of the plate where none is stated. */
export function footCorners(surface: Surface): Point[] {
  const { x, y, depth, turn, foot } = surface;
  if (foot === null) return surfaceCorners(surface);
  return cornersAbout(
    [x, y],
    turn,
    [-foot.width / 2, foot.width / 2],
    [(depth - foot.depth) / 2, (depth + foot.depth) / 2],
  );
}

/** A rectangle whose back looks along a bearing, about a point that is `across` and `back` 0 of it. */
function cornersAbout([x, y]: Point, turn: number, across: Point, back: Point): Point[] {
  const [sin, cos] = towards(turn);
  const at = (u: number, v: number): Point => [x + u * cos + v * sin, y - u * sin + v * cos];
  const [[left, right], [front, rear]] = [across, back];
  return [at(left, front), at(right, front), at(right, rear), at(left, rear)];
}

/** What a surface is called in a sentence. */
export const surfaceCalled = (name: string): string => (name === DESK || name === FLOOR ? name : `“${name}”`);

/** Whether a loudspeaker goes up and down with the desk: one on the desk does, and one on a riser that stands on it. */
export const ridesAlong = (layout: Surfaced, side: SideName): boolean =>
  layout.placement[side].on === DESK || surfaceUnder(layout, side)?.on === DESK;

/** A point from above as a tape on what a stand is on has it: from the middle of its front edge to the right, and back from that edge. */
export function placeOn(layout: Surfaced, side: SideName, [x, y]: Point): Point {
  const surface = surfaceUnder(layout, side);
  if (!surface) return [x, y];
  const [sin, cos] = towards(surface.turn);
  const [right, away] = [x - surface.x, y - surface.y];
  return [right * cos - away * sin, right * sin + away * cos];
}
