import { along, cross, dot, length, mirrorX, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { radians } from '$lib/geometry/angle.ts';
import { baffleLength } from '$lib/project/cabinet.ts';
import type { SideName, Speaker } from '$lib/project/project.ts';
import type { Pose } from '$lib/layout/pose.ts';

/**
 * How a cabinet really stands: six numbers, as free as a body is in space. Desk frame of the right loudspeaker; the left
 * one is its mirror image, so `x` is positive on its own side too. mm and radians.
 */
export interface Standing {
  /** Where the middle of the front bottom edge is, from above. */
  readonly x: number;
  readonly y: number;
  /** How high it is over the surface. */
  readonly front: number;
  /** Positive turns the front towards the middle. */
  readonly toe: number;
  /** Positive has the front high. */
  readonly tilt: number;
  /** About the middle line of the cabinet's bottom, positive with the edge towards the middle high. */
  readonly roll: number;
}

/** What is fixed on a cabinet: where its points lie, seen from the middle of the front bottom edge. mm and radians. */
export interface Cabinet {
  readonly side: SideName;
  /** Height of what its stand is on over the desk. */
  readonly base: number;
  readonly width: number;
  readonly depth: number;
  readonly baffle: number;
  readonly rake: number;
  /** The aimed point, up the baffle and towards the middle. */
  readonly aimed: OnBaffle;
  readonly drivers: readonly (OnBaffle & { readonly name: string })[];
}

export interface OnBaffle {
  readonly height: number;
  readonly offset: number;
}

/** The cabinet of a plan's pose: points on the baffle are read back from where the plan has them. */
export function cabinetOf(speaker: Speaker, pose: Pose): Cabinet {
  const front = vec3(pose.mark.x, pose.mark.y, pose.mark.z + pose.frontEdgeHeight);
  const onBaffle = (point: Vec3): OnBaffle => {
    const from = subtract(point, front);
    return { height: dot(from, pose.up), offset: dot(from, pose.inboard) };
  };
  return {
    side: pose.side,
    base: pose.mark.z,
    width: speaker.width,
    depth: speaker.depth,
    baffle: baffleLength(speaker),
    rake: radians(speaker.baffleRake),
    aimed: onBaffle(pose.aimedPoint),
    drivers: pose.drivers.map(({ driver, position }) => ({ name: driver.name, ...onBaffle(position) })),
  };
}

/** How the plan has it stand: level from side to side. */
export const plannedStanding = ({ side, mark, frontEdgeHeight, toe, tilt }: Pose): Standing => ({
  x: side === 'left' ? -mark.x : mark.x,
  y: mark.y,
  front: frontEdgeHeight,
  toe,
  tilt,
  roll: 0,
});

/** A cabinet as it stands: where its points and directions are. Desk frame of either side, mm. */
export interface Stood {
  /** Unit vectors: along the axis; up the baffle; towards the middle; rearwards along the bottom; square to the bottom, up. */
  readonly forward: Vec3;
  readonly up: Vec3;
  readonly inboard: Vec3;
  readonly rear: Vec3;
  readonly normal: Vec3;
  /** The middle of the front bottom edge. */
  readonly front: Vec3;
  readonly onBaffle: (at: OnBaffle) => Vec3;
  /** A point of the bottom: so far rearwards, and so far towards the middle. */
  readonly onBottom: (rearwards: number, inwards: number) => Vec3;
}

/** Puts a cabinet where it stands: toe about the plumb line, tilt about the front bottom edge, then roll. */
export function stood(cabinet: Cabinet, { x, y, front: height, toe, tilt, roll }: Standing): Stood {
  const flip = cabinet.side === 'left' ? mirrorX : (v: Vec3): Vec3 => v;
  const [sinToe, cosToe, sinTilt, cosTilt] = [Math.sin(toe), Math.cos(toe), Math.sin(tilt), Math.cos(tilt)];
  const level = vec3(-cosToe, sinToe, 0);
  const square = vec3(sinToe * sinTilt, cosToe * sinTilt, cosTilt);
  const turned = (a: Vec3, b: Vec3, angle: number): Vec3 => along(along(ORIGIN, a, Math.cos(angle)), b, Math.sin(angle)); // prettier-ignore
  const rear = flip(vec3(sinToe * cosTilt, cosToe * cosTilt, -sinTilt));
  const inboard = flip(turned(level, square, roll));
  const normal = flip(turned(square, level, -roll));
  const front = flip(vec3(x, y, cabinet.base + height));
  const up = turned(normal, rear, cabinet.rake);
  return {
    forward: turned(along(ORIGIN, rear, -1), normal, cabinet.rake),
    up,
    inboard,
    rear,
    normal,
    front,
    onBaffle: (at) => along(along(front, up, at.height), inboard, at.offset),
    onBottom: (rearwards, inwards) => along(along(front, rear, rearwards), inboard, inwards),
  };
}

const ORIGIN = vec3(0, 0, 0);

/** Where the axis passes a head. */
export interface Pass {
  /** The point of the axis nearest the head. */
  readonly at: Vec3;
  /** From the head to it, seen along the axis: to the right and up, mm. */
  readonly right: number;
  readonly over: number;
  /** Its distance from the head. */
  readonly miss: number;
}

export function passOf(cabinet: Cabinet, standing: Standing, head: Vec3): Pass {
  const { forward, onBaffle } = stood(cabinet, standing);
  const aimed = onBaffle(cabinet.aimed);
  const at = along(aimed, forward, dot(subtract(head, aimed), forward));
  const off = subtract(at, head);
  // As somebody sees it who sits there and looks along the axis, towards the loudspeaker.
  const right = cross(PLUMB, forward);
  const across = along(ORIGIN, right, 1 / length(right));
  return { at, right: dot(off, across), over: dot(off, cross(forward, across)), miss: length(off) };
}

const PLUMB = vec3(0, 0, 1);
