import { add, cross, dot, length, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Face, Solid } from '$lib/drawing/solid.ts';
import type { Pen, Subject } from '$lib/drawing/view.ts';
import type { SpaceFace, SpaceLine } from './space.ts';

/** A thing with its skin of flat faces; a wall has one face only. */
export interface Body {
  readonly subject: Subject;
  readonly solid: Solid;
  readonly pen: Pen;
  readonly faint: boolean;
  readonly layer: SpaceFace['layer'];
}

/** How a body is drawn where nothing else is said. */
export const plainly = { pen: 'wide', faint: false, layer: 0 } as const;

const unit = (v: Vec3): Vec3 => scale(v, 1 / (length(v) || 1));

const cornersOf = ({ corners }: Solid, loop: readonly number[]): Vec3[] =>
  loop.flatMap((index) => corners[index] ?? []);

/** Twice the area of a flat loop, square to it: the way it points by the right-hand rule (M. E. Newell's sum). */
export const areaVector = (loop: readonly Vec3[]): Vec3 =>
  loop.reduce(
    (sum, corner, index) => add(sum, cross(corner, loop[(index + 1) % loop.length] ?? corner)),
    vec3(0, 0, 0),
  );

/** A solid from its corners and loops, outwards by the right-hand rule or inwards all alike: turned outwards here, once. */
export function solidOf(corners: readonly Vec3[], loops: readonly (readonly number[])[]): Solid {
  const faces = loops.map((loop): Face => ({
    loop,
    normal: unit(areaVector(cornersOf({ corners, faces: [] }, loop))),
  }));
  const [origin = vec3(0, 0, 0)] = corners;
  // Six times the volume, by the divergence theorem.
  const volume = loops.reduce((sum, loop) => {
    const points = cornersOf({ corners, faces: [] }, loop);
    return sum + dot(areaVector(points), subtract(points[0] ?? origin, origin));
  }, 0);
  if (volume >= 0) return { corners, faces };
  return {
    corners,
    faces: faces.map(({ loop, normal }) => ({ loop: [...loop].reverse(), normal: scale(normal, -1) })),
  };
}

/** What a flat loop is drawn out to by a vector: two ends and a side an edge. */
export function prism(loop: readonly Vec3[], by: Vec3): Solid {
  const count = loop.length;
  const next = (index: number): number => (index + 1) % count;
  const first = loop.map((_, index) => index);
  return solidOf(
    [...loop, ...loop.map((corner) => add(corner, by))],
    [
      [...first].reverse(),
      first.map((index) => index + count),
      ...first.map((index) => [index, next(index), next(index) + count, index + count]),
    ],
  );
}

/** One face alone, seen from the side from which it runs counter-clockwise. */
export const plate = (corners: readonly Vec3[]): Solid => ({
  corners,
  faces: [{ loop: corners.map((_, index) => index), normal: unit(areaVector(corners)) }],
});

/** Its faces, each counter-clockwise seen from outside. */
export const facesOf = ({ subject, solid, faint, layer }: Body): SpaceFace[] =>
  solid.faces.map(({ loop, normal }) => {
    const corners = cornersOf(solid, loop);
    const outwards = dot(areaVector(corners), normal) >= 0;
    return { subject, corners: outwards ? corners : corners.reverse(), normal: unit(normal), faint, layer };
  });

/** Cosine of 32°: faces that meet at less stand for one that is bent. */
const BENT = Math.cos((32 * Math.PI) / 180);

/** The edges between its faces, each once. */
export function edgesOf({ subject, solid, pen, faint }: Body): SpaceLine[] {
  const edges = new Map<string, { readonly ends: readonly [number, number]; readonly between: Vec3[] }>();
  for (const { loop, normal } of solid.faces) {
    loop.forEach((a, index) => {
      const b = loop[(index + 1) % loop.length] ?? a;
      const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
      const known = edges.get(key);
      if (known) known.between.push(unit(normal));
      else edges.set(key, { ends: [a, b], between: [unit(normal)] });
    });
  }
  return [...edges.values()].flatMap(({ ends, between }): SpaceLine[] => {
    const [from, to] = cornersOf(solid, ends);
    const [one, other] = between;
    if (!from || !to) return [];
    const blunt = one !== undefined && other !== undefined && dot(one, other) > BENT;
    return [{ subject, pen, from, to, faint, between, blunt }];
  });
}
