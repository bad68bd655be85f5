import { cross, dot, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { isometric } from './isometric.ts';

/** A body with six flat faces. Each four: front left, front right, rear right, rear left. */
export interface Corners {
  readonly base: readonly [Vec3, Vec3, Vec3, Vec3];
  readonly top: readonly [Vec3, Vec3, Vec3, Vec3];
}

/** Its faces that the eye sees, counter-clockwise from outside. None hides another: the body is convex. */
export function facesInSight({ base, top }: Corners): readonly (readonly Vec3[])[] {
  const sides = base.map((foot, i) => {
    const next = (i + 1) % base.length;
    return [foot, base[next] ?? foot, top[next] ?? foot, top[i] ?? foot];
  });
  return [[...base].reverse(), ...sides, [...top]].filter(([a, b, c]) => {
    if (!a || !b || !c) return false;
    return dot(cross(subtract(b, a), subtract(c, a)), isometric.eye) > 0;
  });
}
