/**
 * Points and vectors. Lengths are millimetres, angles radians. In the plane, polygons run counter-clockwise and holes
 * clockwise; in space the frame is right-handed.
 */

/** A point or vector in a plane: `[first axis, second axis]`, mm. */
export type Point = readonly [number, number];

/** A point or vector in space, mm. */
export interface Vec3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const vec3 = (x: number, y: number, z: number): Vec3 => ({ x, y, z });
export const add = (a: Vec3, b: Vec3): Vec3 => vec3(a.x + b.x, a.y + b.y, a.z + b.z);
export const subtract = (a: Vec3, b: Vec3): Vec3 => vec3(a.x - b.x, a.y - b.y, a.z - b.z);
export const scale = (a: Vec3, factor: number): Vec3 => vec3(a.x * factor, a.y * factor, a.z * factor);
/** The point `a + factor · direction`. */
export const along = (a: Vec3, direction: Vec3, factor: number): Vec3 => add(a, scale(direction, factor));
export const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec3, b: Vec3): Vec3 =>
  vec3(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
export const length = (a: Vec3): number => Math.hypot(a.x, a.y, a.z);
export const distance = (a: Vec3, b: Vec3): number => length(subtract(a, b));
/** The point a `fraction` of the way from `a` (0) to `b` (1). */
export const between = (a: Vec3, b: Vec3, fraction: number): Vec3 => along(a, subtract(b, a), fraction);

/**
 * The angle between two vectors, 0…π. Taken with `atan2`, so it keeps its digits near 0 and π, where `acos` loses half
 * of them. A zero vector has no direction; the angle to it is 0.
 */
export const angleBetween = (a: Vec3, b: Vec3): number => Math.atan2(length(cross(a, b)), dot(a, b));

/** Mirrored in the plane x = 0: how the left side is made from the right. */
export const mirrorX = (a: Vec3): Vec3 => vec3(-a.x, a.y, a.z);
