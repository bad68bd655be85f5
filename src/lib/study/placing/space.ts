import { bodyGap } from '$lib/geometry/bodyGap.ts';
import { gapWithin, type Outline } from '$lib/geometry/gapWithin.ts';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { mirrorX, vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, sixSided, uprightBox, type Solid } from '$lib/geometry/solid.ts';
import { monitorBodies } from '$lib/layout/bodies.ts';
import { earsOf } from '$lib/layout/ears.ts';
import type { Layout, Monitor, SideName } from '$lib/project/project.ts';
import { outlineUnder } from '$lib/project/surface.ts';
import { towards } from '$lib/project/wall.ts';

/** A loudspeaker on its stand at the mark (0, 0), untoed, seen as a right one. */
export interface StoodSet {
  readonly cabinet: readonly Vec3[];
  readonly footprint: readonly Point[];
}

/** What a loudspeaker has to keep clear of: gaps in mm, 0 or more. */
export interface Clearances {
  readonly screen: number;
  readonly wall: number;
}

/** A head has no thickness here, only the line from ear to ear: a plate this thin, mm. */
const EARS = 0.1;
/** Boxes that touch are looked at closely, mm. */
const DUST = 1e-9;
/** A screen in the mirrored room, without a negative zero. */
const mirroredScreen = (monitor: Monitor): Monitor => ({ ...monitor, x: 0 - monitor.x, turn: 0 - monitor.turn });

/** Room beyond this does not matter to anybody, mm. */
const PLENTY = 1000;

/**
 * How much room a loudspeaker has at a mark, mm; negative where it cannot stand: the stand all on what carries it; cabinet and
 * stand clear of walls and screens; off the head, and on its own side of it. Seen as a right loudspeaker.
 */
export function spaceOf(layout: Layout, side: SideName, set: StoodSet, clear: Clearances) {
  const flip = side === 'left' ? mirrorX : (v: Vec3): Vec3 => v;
  const { desk, room, monitors, listener } = layout;
  const screens = monitors.flatMap((monitor) => monitorBodies(side === 'right' ? monitor : mirroredScreen(monitor)));
  const sign = side === 'left' ? -1 : 1;
  const outline = outlineUnder(layout, side);
  const top = outline && side === 'left' ? mirroredOutline(outline) : outline;
  const walls = room.walls.map(({ bearing, distance }) => {
    const [right, ahead] = towards(bearing);
    return { right: sign * right, ahead, distance: distance - clear.wall };
  });
  const ears = earsOf(listener, desk);
  const head = headPlate(flip(ears.left), flip(ears.right));
  const middle = (flip(ears.left).x + flip(ears.right).x) / 2;
  const bodies = [{ body: head, least: 0 }, ...screens.map((body) => ({ body, least: clear.screen }))].map((one) => ({
    ...one,
    box: boxOf(one.body.vertices),
  }));
  return (mark: Point, toe: number): number => {
    const [sin, cos] = [Math.sin(toe), Math.cos(toe)];
    const at = (x: number, y: number): Point => [mark[0] + x * cos + y * sin, mark[1] - x * sin + y * cos];
    let room = PLENTY;
    const keep = (one: number): void => {
      if (one < room) room = one;
    };
    const clearOfWalls = ([x, y]: Point): void => {
      for (const { right, ahead, distance } of walls) keep(distance - x * right - y * ahead);
    };
    const base: Point[] = [];
    for (const [x, y] of set.footprint) {
      const corner = at(x, y);
      clearOfWalls(corner);
      base.push(corner);
    }
    if (top) keep(gapWithin(top, base).gap);
    const corners = set.cabinet.map(({ x, y, z }) => {
      const corner = at(x, y);
      clearOfWalls(corner);
      keep(corner[0] - middle);
      return vec3(corner[0], corner[1], z);
    });
    // What is out already need not be held against bodies.
    if (room < 0) return room;
    const box = boxOf(corners);
    // Most places are plainly far from everything.
    const near = bodies.filter((one) => boxGap(box, one.box) < Math.max(one.least, DUST));
    if (near.length === 0) return room;
    const cabinet = sixSided(corners);
    for (const { body, least } of near) keep(gapOf(cabinet, body, least));
    return room;
  };
}

/** The mirror image in x = 0, counter-clockwise again. */
const mirroredOutline = ({ points, convex }: Outline): Outline => ({
  points: points.map(([x, y]): Point => [-x, y]).reverse(),
  convex,
});

/** Gap of two bodies over the least that is asked, mm; negative by how deep one is in the other, where it is. */
function gapOf(body: Solid, other: Solid, least: number): number {
  const depth = overlapDepth(body, other);
  if (depth > 0) return -depth - least;
  return least === 0 ? PLENTY : Math.min(PLENTY, bodyGap(body, other, least) - least);
}

/** The upright box round some points: least and most of x, y and z. */
function boxOf(points: readonly Vec3[]): Float64Array {
  const box = Float64Array.of(Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity);
  for (const { x, y, z } of points) {
    if (x < (box[0] ?? x)) box[0] = x;
    if (y < (box[1] ?? y)) box[1] = y;
    if (z < (box[2] ?? z)) box[2] = z;
    if (x > (box[3] ?? x)) box[3] = x;
    if (y > (box[4] ?? y)) box[4] = y;
    if (z > (box[5] ?? z)) box[5] = z;
  }
  return box;
}

/** How far two boxes are apart along one axis, at the most: what is in them is no nearer. */
function boxGap(one: Float64Array, other: Float64Array): number {
  let most = -Infinity;
  for (let axis = 0; axis < 3; axis++) {
    const [low, high] = [one[axis] ?? 0, one[axis + 3] ?? 0];
    const [otherLow, otherHigh] = [other[axis] ?? 0, other[axis + 3] ?? 0];
    most = Math.max(most, low - otherHigh, otherLow - high);
  }
  return most;
}

function headPlate(one: Vec3, other: Vec3): Solid {
  const [left, width] = [Math.min(one.x, other.x), Math.abs(other.x - one.x)];
  return uprightBox(vec3(left, one.y, one.z), vec3(width, EARS, EARS));
}

/** How far a corner of it lies from the mark, seen from above, at the most, mm. */
export const reachOf = ({ cabinet, footprint }: StoodSet): number =>
  Math.max(...cabinet.map(({ x, y }) => Math.hypot(x, y)), ...footprint.map(([x, y]) => Math.hypot(x, y)));
