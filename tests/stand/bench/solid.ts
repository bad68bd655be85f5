import { cross, dot, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';

/** A convex body by its faces, each counter-clockwise as seen from outside; mm. */
export type Faces = readonly (readonly Vec3[])[];

/** Where dot(normal, p) ≤ limit. */
export interface HalfSpace {
  readonly normal: Vec3;
  readonly limit: number;
}

/** A box from the origin to a corner. */
export function box(from: Vec3, to: Vec3): Faces {
  const at = (i: number): Vec3 => vec3(i & 1 ? to.x : from.x, i & 2 ? to.y : from.y, i & 4 ? to.z : from.z);
  return [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ].map((face) => face.map(at));
}

/** Points this near to a plane lie on it, mm: cuts through an edge leave no slivers. */
const ON = 1e-9;

/** What is left of a convex body after a straight cut. */
export function sawn(body: Faces, { normal, limit }: HalfSpace): Faces {
  const size = Math.hypot(normal.x, normal.y, normal.z);
  const over = (p: Vec3): number => (dot(normal, p) - limit) / size;
  if (!body.some((face) => face.some((p) => over(p) > ON))) return body;
  const rims: Vec3[] = [];
  const kept = body.flatMap((face) => {
    const left: Vec3[] = [];
    face.forEach((a, i) => {
      const b = face[(i + 1) % face.length] ?? a;
      const [from, to] = [over(a), over(b)];
      if (from <= ON) left.push(a);
      if (Math.abs(from) <= ON) rims.push(a);
      if ((from < -ON && to > ON) || (from > ON && to < -ON)) {
        const share = from / (from - to);
        const met = vec3(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share, a.z + (b.z - a.z) * share);
        left.push(met);
        rims.push(met);
      }
    });
    return left.length >= 3 ? [left] : [];
  });
  return [...kept, ...cap(rims, normal)];
}

/** The new face: the points on the plane, in order round their middle. */
function cap(points: readonly Vec3[], normal: Vec3): Vec3[][] {
  if (points.length < 3) return [];
  const n = points.length;
  const middle = vec3(
    points.reduce((sum, { x }) => sum + x, 0) / n,
    points.reduce((sum, { y }) => sum + y, 0) / n,
    points.reduce((sum, { z }) => sum + z, 0) / n,
  );
  const [first = middle] = points;
  const right = subtract(first, middle);
  const up = cross(normal, right);
  const angle = (p: Vec3): number =>
    Math.atan2(
      dot(subtract(p, middle), up) / Math.hypot(up.x, up.y, up.z),
      dot(subtract(p, middle), right) / Math.hypot(right.x, right.y, right.z),
    );
  return [[...points].sort((a, b) => angle(a) - angle(b))];
}

/** mm³, by tetrahedra from the origin. */
export const volumeOf = (body: Faces): number =>
  body.reduce((sum, [a, ...others]) => {
    if (!a) return sum;
    return others.slice(1).reduce((part, c, i) => part + dot(a, cross(others[i] ?? c, c)) / 6, sum);
  }, 0);

export const cornersOf = (body: Faces): readonly Vec3[] => body.flat();
