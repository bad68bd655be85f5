import earcut from 'earcut';
import { isConvex } from '$lib/geometry/gapWithin.ts';
import { cross, dot, length, scale, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';

/** A flat face in its own plane: it keeps its size there, and runs the way it does. */
function flat(corners: readonly Vec3[], normal: Vec3): Point[] {
  const aside = cross(normal, Math.abs(normal.z) < 0.9 ? vec3(0, 0, 1) : vec3(1, 0, 0));
  const across = scale(aside, 1 / length(aside));
  const over = cross(normal, across);
  return corners.map((corner) => [dot(corner, across), dot(corner, over)]);
}

/** A flat face as triangles that run the way it does; its corners are theirs. */
export function triangles(corners: readonly Vec3[], normal: Vec3): (readonly [Vec3, Vec3, Vec3])[] {
  const places = flat(corners, normal);
  const indices = earcut(places.flat());
  return Array.from({ length: indices.length / 3 }, (_, triangle) =>
    [0, 1, 2].flatMap((corner) => corners[indices[3 * triangle + corner] ?? -1] ?? []),
  ).flatMap(([a, b, c]): (readonly [Vec3, Vec3, Vec3])[] => {
    if (!a || !b || !c) return [];
    const [p = [0, 0], q = [0, 0], r = [0, 0]] = flat([a, b, c], normal);
    const area = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    return [area >= 0 ? [a, b, c] : [a, c, b]];
  });
}

/** The same without hollows: the face itself where it has none. */
export const convexPieces = (corners: readonly Vec3[], normal: Vec3): (readonly Vec3[])[] =>
  isConvex(flat(corners, normal)) ? [corners] : triangles(corners, normal);
