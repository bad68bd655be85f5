import { cross, dot, subtract, type Vec3 } from '$lib/geometry/point.ts';

/** Corners by their place in `vertices`, counter-clockwise seen from outside. */
export type Triangle = readonly [number, number, number];

/** A surface of triangles that share their corners, mm. */
export interface Mesh {
  readonly vertices: readonly Vec3[];
  readonly triangles: readonly Triangle[];
}

/** The three sides of a triangle, each from corner to corner. */
export const sidesOf = ([a, b, c]: Triangle): readonly (readonly [number, number])[] => [
  [a, b],
  [b, c],
  [c, a],
];

/**
 * What keeps the mesh from bounding a body, in words; null when nothing does: every corner is there, no triangle uses a
 * corner twice, every edge belongs to exactly two triangles that run along it in opposite ways, and the inside is inside.
 */
export function flawOf(mesh: Mesh): string | null {
  const { vertices, triangles } = mesh;
  const runs = new Set<string>();
  for (const triangle of triangles) {
    if (!triangle.every((corner) => vertices[corner] !== undefined)) return 'a corner that is not there';
    if (new Set(triangle).size < 3) return 'a triangle with a corner used twice';
    for (const [from, to] of sidesOf(triangle)) {
      if (runs.has(`${from} ${to}`)) return 'an edge that two triangles run along the same way';
      runs.add(`${from} ${to}`);
    }
  }
  for (const run of runs) {
    if (!runs.has(run.split(' ').reverse().join(' '))) return 'an edge with one triangle only';
  }
  return volumeOf(mesh) > 0 ? null : 'a surface that encloses nothing, or is inside out';
}

/** The volume within a closed mesh, mm³; negative when it is inside out (by the divergence theorem). */
export function volumeOf({ vertices, triangles }: Mesh): number {
  const [origin] = vertices;
  if (!origin) return 0;
  const from = (corner: number): Vec3 => subtract(vertices[corner] ?? origin, origin);
  return triangles.reduce((sum, [a, b, c]) => sum + dot(from(a), cross(from(b), from(c))), 0) / 6;
}
