import { radians } from '$lib/geometry/angle.ts';
import { add, cross, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Projection } from './projection.ts';

/**
 * Isometric axonometry (ISO 5456-3): the eye sees all three axes at one angle, from the front, the right and above. x runs
 * to the lower right, y (away) to the upper right, z up; a length along any of them is drawn √(2/3) as long.
 */
export const isometric: Projection = {
  flat: ({ x, y, z }) => [(x + y) / Math.SQRT2, (2 * z + y - x) / Math.sqrt(6)],
  eye: scale(vec3(1, -1, 1), 1 / Math.sqrt(3)),
};

/** A stand's own frame in the desk's: x to the right of whoever faces the front, y back along the toed direction, z up. */
interface StandFrame {
  readonly right: Vec3;
  readonly back: Vec3;
}

function standFrame(name: SideName, { toe }: SidePlan): StandFrame {
  const turn = radians(toe) * (name === 'right' ? 1 : -1);
  const back = vec3(Math.sin(turn), Math.cos(turn), 0);
  return { right: cross(back, UP), back };
}

const UP = vec3(0, 0, 1);

/** A point of the desk's frame in the stand's, from the mark. */
export function inStand(name: SideName, side: SidePlan, point: Vec3): Vec3 {
  const { right, back } = standFrame(name, side);
  const from = subtract(point, side.mark);
  return vec3(dot(from, right), dot(from, back), from.z);
}

/** Isometric with the stand's own axes for the three, whatever its toe: both stands of a pair look alike. */
export function isometricOf(name: SideName, side: SidePlan): Projection {
  const { right, back } = standFrame(name, side);
  const { eye } = isometric;
  return {
    flat: (point) => isometric.flat(inStand(name, side, point)),
    eye: add(add(scale(right, eye.x), scale(back, eye.y)), scale(UP, eye.z)),
  };
}
