import { cross, scale, length, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Mesh, Triangle } from './mesh.ts';

const HEADER_BYTES = 80;
const COUNT_BYTES = 4;
/** Normal and three corners in single precision, and two bytes of no meaning. */
const TRIANGLE_BYTES = 50;

/** Must not begin with "solid": readers take that for the format's text form. The format itself has no unit. */
const HEADER = 'Wedgewright, lengths in millimetres';

/**
 * The mesh as a binary STL file, in mm. Corners are in single precision, which tells micrometres apart up to 8 m, so
 * corners on that grid stay apart and edges stay shared.
 */
export function stlFile({ vertices, triangles }: Mesh): Uint8Array {
  const bytes = new Uint8Array(HEADER_BYTES + COUNT_BYTES + triangles.length * TRIANGLE_BYTES);
  bytes.set(new TextEncoder().encode(HEADER));
  const view = new DataView(bytes.buffer);
  view.setUint32(HEADER_BYTES, triangles.length, true);
  triangles.forEach((triangle, i) => {
    let at = HEADER_BYTES + COUNT_BYTES + i * TRIANGLE_BYTES;
    const corners = triangle.map((corner) => cornerOf(corner, vertices));
    for (const { x, y, z } of [normalOf(triangle, vertices), ...corners]) {
      for (const value of [x, y, z]) {
        view.setFloat32(at, value, true);
        at += 4;
      }
    }
  });
  return bytes;
}

function cornerOf(corner: number, vertices: readonly Vec3[]): Vec3 {
  const vertex = vertices[corner];
  if (!vertex) throw new RangeError(`STL: expected one of ${vertices.length} corners, got ${corner}`);
  return vertex;
}

/** Outward and of length 1. */
function normalOf([a, b, c]: Triangle, vertices: readonly Vec3[]): Vec3 {
  const [one, two, three] = [cornerOf(a, vertices), cornerOf(b, vertices), cornerOf(c, vertices)];
  const normal = cross(subtract(two, one), subtract(three, one));
  const size = length(normal);
  return size === 0 ? vec3(0, 0, 0) : scale(normal, 1 / size);
}
