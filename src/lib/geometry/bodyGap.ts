import { add, cross, distance, dot, scale, subtract, type Vec3 } from './point.ts';
import { FACES, overlapDepth, type Solid } from './solid.ts';

/**
 * The gap between two six-sided bodies, mm: the least distance of a point of the one from a point of the other; 0 when
 * they touch or lie in each other. Of two convex bodies apart it is between two edges, or a corner and a face.
 *
 * @param most Infinity for bodies further apart than this, mm: most are plainly seen to be.
 */
export function bodyGap(a: Solid, b: Solid, most = Infinity): number {
  if (boxesApart(a, b) > most) return Infinity;
  if (overlapDepth(a, b) > 0) return 0;
  let least = Infinity;
  const edges = edgesOf(b);
  for (const [from, to] of edgesOf(a)) {
    for (const [start, end] of edges) least = Math.min(least, segmentGap(from, to, start, end));
  }
  for (const [corners, other] of [
    [a.vertices, b],
    [b.vertices, a],
  ] as const) {
    for (const face of facesOf(other)) for (const corner of corners) least = Math.min(least, overFace(corner, face));
  }
  return least > most ? Infinity : least;
}

/** How far apart the upright boxes round two bodies are along one axis, at the most: the bodies are no nearer. */
const boxesApart = (a: Solid, b: Solid): number =>
  Math.max(
    ...(['x', 'y', 'z'] as const).map((axis) => {
      const [one, other] = [a, b].map(({ vertices }) => vertices.map((vertex) => vertex[axis]));
      if (!one || !other) return 0;
      return Math.max(Math.min(...one) - Math.max(...other), Math.min(...other) - Math.max(...one));
    }),
  );

/** A flat convex face: a normal, and across each of its sides a vector in it, from the corner where that begins. */
interface Face {
  readonly normal: Vec3;
  readonly corner: Vec3;
  readonly sides: readonly { readonly corner: Vec3; readonly across: Vec3 }[];
}

const facesOf = ({ vertices }: Solid): Face[] =>
  FACES.flatMap((face) => {
    const corners = face.flatMap((index) => vertices[index] ?? []);
    const [first, second, , last] = corners;
    if (!first || !second || !last) return [];
    const normal = cross(subtract(second, first), subtract(last, first));
    const sides = corners.map((corner, i) => {
      const along = subtract(corners[(i + 1) % corners.length] ?? corner, corner);
      return { corner, across: cross(normal, along) };
    });
    return [{ normal, corner: first, sides }];
  });

const edgesOf = ({ vertices }: Solid): (readonly [Vec3, Vec3])[] =>
  ([0, 1, 2, 3] as const).flatMap((i) => {
    const next = (i + 1) % 4;
    return [
      [i, next],
      [i + 4, next + 4],
      [i, i + 4],
    ].flatMap(([from = 0, to = 0]) => {
      const [start, end] = [vertices[from], vertices[to]];
      return start && end ? [[start, end] as const] : [];
    });
  });

/** Height of a point over a face that it lies square over, mm; Infinity where it does not. */
function overFace(point: Vec3, { normal, corner, sides }: Face): number {
  let [inside, outside] = [true, true];
  for (const side of sides) {
    const off = dot(side.across, subtract(point, side.corner));
    inside &&= off >= 0;
    outside &&= off <= 0;
    if (!inside && !outside) return Infinity;
  }
  return Math.abs(dot(normal, subtract(point, corner))) / Math.sqrt(dot(normal, normal));
}

/** The least distance between two segments, mm: where their lines come nearest, held to the ends of both. */
function segmentGap(from: Vec3, to: Vec3, start: Vec3, end: Vec3): number {
  const [along, other, between] = [subtract(to, from), subtract(end, start), subtract(from, start)];
  const [a, b, c] = [dot(along, along), dot(along, other), dot(other, other)];
  const [d, e] = [dot(along, between), dot(other, between)];
  const spread = a * c - b * b;
  const held = (value: number): number => Math.min(1, Math.max(0, value));
  // Of parallel segments any point does as a start; the other one is then held to its ends.
  const first = spread > PARALLEL * a * c ? held((b * e - c * d) / spread) : 0;
  const second = (b * first + e) / c;
  const t = held(second);
  const s = t === second ? first : held((b * t - d) / a);
  return distance(add(from, scale(along, s)), add(start, scale(other, t)));
}

/** Square of the sine under which two directions count as parallel. */
const PARALLEL = 1e-18;
