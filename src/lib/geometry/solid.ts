import { cross, dot, length, scale, subtract, vec3, type Vec3 } from './point.ts';

/** A plane with its outside on the side that `normal` (a unit vector) points to: points p with normal · p = offset. */
interface Plane {
  readonly normal: Vec3;
  readonly offset: number;
}

/** A convex body with flat faces, mm. */
export interface Solid {
  readonly vertices: readonly Vec3[];
  readonly faces: readonly Plane[];
  /** Directions of its edges, one for every set of parallels; unit vectors. */
  readonly edges: readonly Vec3[];
}

/** The corners of each face of a six-sided body, outward by the right-hand rule when the corners are ordered as below. */
export const FACES = [
  [3, 2, 1, 0],
  [4, 5, 6, 7],
  [0, 1, 5, 4],
  [2, 3, 7, 6],
  [1, 2, 6, 5],
  [3, 0, 4, 7],
] as const;
const EDGES = [
  [0, 1],
  [1, 2],
  [0, 4],
  [1, 5],
  [2, 6],
  [3, 7],
  [5, 6],
] as const;

const unit = (v: Vec3): Vec3 => scale(v, 1 / length(v));

/**
 * A body of six flat faces from its eight corners: four round the bottom, then the four over them in the same order.
 * Either sense round is accepted; the faces are turned outwards here, once.
 */
export function sixSided(corners: readonly Vec3[]): Solid {
  const centre = scale(
    corners.reduce((sum, corner) => vec3(sum.x + corner.x, sum.y + corner.y, sum.z + corner.z), vec3(0, 0, 0)),
    1 / corners.length,
  );
  const at = (index: number): Vec3 => corners[index] ?? centre;
  const faces = FACES.map(([a, b, , d]) => {
    const normal = cross(subtract(at(b), at(a)), subtract(at(d), at(a)));
    const outward = dot(normal, subtract(at(a), centre)) < 0 ? unit(scale(normal, -1)) : unit(normal);
    return { normal: outward, offset: dot(outward, at(a)) };
  });
  return { vertices: corners, faces, edges: EDGES.map(([a, b]) => unit(subtract(at(b), at(a)))) };
}

/** A box square to the frame from its lowest corner and its size. A side of length 0 is a plate: give it some thickness. */
export function uprightBox(lowest: Vec3, size: Vec3): Solid {
  const { x, y, z } = lowest;
  const [right, back, top] = [x + size.x, y + size.y, z + size.z];
  return {
    vertices: [
      vec3(x, y, z),
      vec3(right, y, z),
      vec3(right, back, z),
      vec3(x, back, z),
      vec3(x, y, top),
      vec3(right, y, top),
      vec3(right, back, top),
      vec3(x, back, top),
    ],
    faces: [
      { normal: vec3(0, 0, -1), offset: -z },
      { normal: vec3(0, 0, 1), offset: top },
      { normal: vec3(0, -1, 0), offset: -y },
      { normal: vec3(0, 1, 0), offset: back },
      { normal: vec3(1, 0, 0), offset: right },
      { normal: vec3(-1, 0, 0), offset: -x },
    ],
    edges: [vec3(1, 0, 0), vec3(0, 1, 0), vec3(0, 0, 1)],
  };
}

/** Cross products of directions closer to parallel than this give no axis of their own. */
const NEARLY_PARALLEL = 1e-9;

/** How far the two bodies' shadows on an axis lie over each other, mm; negative when they are apart. */
function overlapAlong(a: Solid, b: Solid, axis: Vec3): number {
  let [leastA, mostA, leastB, mostB] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const vertex of a.vertices) {
    const reach = dot(vertex, axis);
    if (reach < leastA) leastA = reach;
    if (reach > mostA) mostA = reach;
  }
  for (const vertex of b.vertices) {
    const reach = dot(vertex, axis);
    if (reach < leastB) leastB = reach;
    if (reach > mostB) mostB = reach;
  }
  return Math.min(mostA - leastB, mostB - leastA);
}

/**
 * How deep two bodies lie in each other: the shortest move that would part them, mm. Zero or less when they only touch
 * or stand apart (minus a lower bound of the gap). Separating axes: face normals and cross products of edges.
 */
export function overlapDepth(a: Solid, b: Solid): number {
  let least = Infinity;
  for (const faces of [a.faces, b.faces]) {
    for (const { normal } of faces) {
      least = Math.min(least, overlapAlong(a, b, normal));
      if (least <= 0) return least;
    }
  }
  for (const edgeA of a.edges) {
    for (const edgeB of b.edges) {
      const axis = cross(edgeA, edgeB);
      const size = length(axis);
      if (size < NEARLY_PARALLEL) continue;
      least = Math.min(least, overlapAlong(a, b, scale(axis, 1 / size)));
      if (least <= 0) return least;
    }
  }
  return least;
}

/**
 * The stretch of the segment from `start` to `end` that lies inside the body, as two fractions 0…1 of the way; null when
 * it stays outside or only touches.
 */
export function stretchInside(solid: Solid, start: Vec3, end: Vec3): readonly [number, number] | null {
  const step = subtract(end, start);
  let [enter, leave] = [0, 1];
  for (const { normal, offset } of solid.faces) {
    const room = offset - dot(normal, start);
    const rise = dot(normal, step);
    if (rise === 0) {
      if (room <= 0) return null;
    } else if (rise > 0) {
      leave = Math.min(leave, room / rise);
    } else {
      enter = Math.max(enter, room / rise);
    }
  }
  return enter < leave ? [enter, leave] : null;
}
