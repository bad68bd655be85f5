import { add, cross, vec3, type Vec3 } from '$lib/geometry/point.ts';

/** A thin, flat, rigid plate with straight edges. Lengths in mm, desk frame. */
export interface Plate {
  /** Counter-clockwise as seen from the tip of `normal`. */
  readonly corners: readonly Vec3[];
  /** Square to it, a unit vector. */
  readonly normal: Vec3;
  /** Whether its outline turns inwards nowhere. */
  readonly convex: boolean;
}

/** A rectangle from one corner and its two sides, which are square to each other; its normal is across × up. */
export function rectangularPlate(corner: Vec3, across: Vec3, up: Vec3): Plate {
  const square = cross(across, up);
  const size = Math.hypot(square.x, square.y, square.z);
  const right = add(corner, across);
  return {
    corners: [corner, right, add(right, up), add(corner, up)],
    normal: vec3(square.x / size, square.y / size, square.z / size),
    convex: true,
  };
}
