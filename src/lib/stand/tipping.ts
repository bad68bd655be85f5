import { cross, dot, length, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { SideName } from '$lib/project/project.ts';

/** The edges that a body can tip over: as its loudspeaker faces, front towards the listener, inboard towards the middle. */
export type EdgeName = 'front' | 'rear' | 'inboard' | 'outboard';
export const edgeNames = ['front', 'rear', 'inboard', 'outboard'] as const satisfies readonly EdgeName[];

/** How safely a weight stands inside one edge of what carries it. */
export interface EdgeMargin {
  /** From the edge to where the plumb line through the centre of mass meets the support, in its plane; mm, negative outside. */
  readonly margin: number;
  /**
   * The least tilt of the desk, whatever its direction, that brings the centre of mass over the edge; radians, negative
   * when it is past it already.
   */
  readonly angle: number;
}

/** An edge of a support, counter-clockwise seen from above: the weight stands to its left. */
export type Edge = readonly [Vec3, Vec3];

/** The edges of a four-cornered support: corners front right, rear right, rear left, front left, as the listener sees it. */
export function edgesOf(corners: readonly Vec3[], side: SideName): Record<EdgeName, Edge> {
  const [frontRight, rearRight, rearLeft, frontLeft] = corners;
  if (!frontRight || !rearRight || !rearLeft || !frontLeft) throw new Error('a support has four corners');
  const right: Edge = [frontRight, rearRight];
  const left: Edge = [rearLeft, frontLeft];
  return {
    front: [frontLeft, frontRight],
    rear: [rearRight, rearLeft],
    inboard: side === 'right' ? left : right,
    outboard: side === 'right' ? right : left,
  };
}

/** The margins of a centre of mass within a flat support, whose upward unit normal is given. */
export const marginsOf = (
  centre: Vec3,
  edges: Readonly<Record<EdgeName, Edge>>,
  normal: Vec3,
): Record<EdgeName, EdgeMargin> => ({
  front: marginOf(centre, edges.front, normal),
  rear: marginOf(centre, edges.rear, normal),
  inboard: marginOf(centre, edges.inboard, normal),
  outboard: marginOf(centre, edges.outboard, normal),
});

/**
 * Tilting the desk turns the plumb line. It comes over the edge when it lies in the plane through the centre and the
 * edge, so the least tilt is the angle between plumb line and plane: on a level base atan(margin / height).
 */
function marginOf(centre: Vec3, [from, to]: Edge, normal: Vec3): EdgeMargin {
  const along = subtract(to, from);
  const fromEdge = subtract(centre, from);
  const foot = subtract(fromEdge, vec3(0, 0, dot(fromEdge, normal) / normal.z));
  const plane = cross(along, fromEdge);
  return {
    margin: dot(cross(normal, along), foot) / length(along),
    angle: Math.atan2(plane.z, Math.hypot(plane.x, plane.y)),
  };
}

/** Standard gravity, m/s². */
export const GRAVITY = 9.80665;

/**
 * The horizontal force, N, that just tips a weight over an edge when it acts outwards, square to the edge in plan, at the
 * point among `points` where it takes the least; 0 when the weight falls by itself.
 */
export function tippingForce(centre: Vec3, mass: number, [from, to]: Edge, points: readonly Vec3[]): number {
  const along = subtract(to, from);
  const axis = scale(along, 1 / length(along));
  const outward = scale(vec3(axis.y, -axis.x, 0), 1 / Math.hypot(axis.x, axis.y));
  // (r × force) · axis = r · (force × axis), and the second product is the same for every point.
  const perPush = cross(outward, axis);
  let turning = -Infinity;
  for (const { x, y, z } of points) {
    turning = Math.max(turning, (x - from.x) * perPush.x + (y - from.y) * perPush.y + (z - from.z) * perPush.z);
  }
  const holding = dot(subtract(centre, from), cross(vec3(0, 0, mass * GRAVITY), axis));
  return Math.max(0, holding) / turning;
}
