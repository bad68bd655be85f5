import { along, between, distance, dot, subtract, type Vec3 } from '$lib/geometry/point.ts';

/** A mirror for sound: a point in it, and the unit vector square to it on the side of the room. */
export interface Plane {
  readonly through: Vec3;
  readonly normal: Vec3;
}

/** A path from a source to the head by way of a plane, beside the direct one. */
export interface Bounce {
  /** Where it meets the plane. */
  readonly point: Vec3;
  /** Source to head, mm, at least `ONE_POINT`. */
  readonly direct: number;
  /** Path by the plane less the direct one, mm, 0 or more. */
  readonly excess: number;
}

/** Source and head nearer than this are one point, mm: places metres out are themselves rounded at 1e-12 mm. */
const ONE_POINT = 1e-9;

/**
 * The specular path by a plane, from the source's mirror image. With heights h₁ and h₂ over the plane the squares of the
 * two paths differ by 4·h₁·h₂ exactly, which gives their difference without subtracting one from the other.
 *
 * Null when the source or the head is on the wrong side of the plane, or when they are one point, which
 * leaves no direct sound to compare with. A source and a head
 * both in the plane leave the point open; it is then the middle between them.
 */
export function bounce(plane: Plane, source: Vec3, head: Vec3): Bounce | null {
  const h1 = heightOver(plane, source);
  const h2 = heightOver(plane, head);
  const direct = distance(source, head);
  if (h1 < 0 || h2 < 0 || direct < ONE_POINT) return null;
  const below = along(source, plane.normal, -h1);
  const beside = along(head, plane.normal, -h2);
  const reflected = Math.hypot(distance(below, beside), h1 + h2);
  return {
    point: between(below, beside, h1 + h2 === 0 ? 0.5 : h1 / (h1 + h2)),
    direct,
    excess: (4 * h1 * h2) / (direct + reflected),
  };
}

const heightOver = (plane: Plane, point: Vec3): number => dot(subtract(point, plane.through), plane.normal);
