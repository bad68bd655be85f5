import { vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';

/** A way of looking: what becomes of a point in space, and where the eye is. */
export interface Projection {
  /** The point in the view's plane, mm: first axis to the right, second axis up. */
  readonly flat: (point: Vec3) => Point;
  /** Unit vector from the things towards the eye, which is infinitely far away. */
  readonly eye: Vec3;
}

/** From above, as one sits: x to the right, y up the page, the listener at the bottom and the loudspeakers beyond. */
export const fromAbove: Projection = { flat: ({ x, y }) => [x, y], eye: vec3(0, 0, 1) };

/** From the right-hand end of the desk: listener at the left, wall at the right, height upwards. */
export const fromRight: Projection = { flat: ({ y, z }) => [y, z], eye: vec3(1, 0, 0) };
