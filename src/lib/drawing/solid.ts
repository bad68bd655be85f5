import { dot, length, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { Projection } from './projection.ts';

/** A flat face: indices into the solid's corners, in order round it, and its outward normal. */
export interface Face {
  readonly loop: readonly number[];
  readonly normal: Vec3;
}

export interface Solid {
  readonly corners: readonly Vec3[];
  readonly faces: readonly Face[];
}

export interface ProjectedSolid {
  /** The faces turned towards the eye. */
  readonly faces: readonly (readonly Point[])[];
  /** Edges of which every face is turned away. */
  readonly hiddenEdges: readonly (readonly [Point, Point])[];
}

/** A face seen this nearly edge-on (sine of the angle) has no area to show; its edges belong to its neighbours. */
const EDGE_ON = 1e-9;

const edgesOf = (loop: readonly number[]): (readonly [number, number])[] =>
  loop.map((corner, index) => [corner, loop[(index + 1) % loop.length] ?? corner]);

const edgeKey = (a: number, b: number): string => `${Math.min(a, b)}-${Math.max(a, b)}`;

/**
 * A solid as it is seen. Exact for convex solids; of others it shows every face that looks at the eye, without working out
 * what stands in front of what.
 */
export function projectSolid({ corners, faces }: Solid, projection: Projection): ProjectedSolid {
  const flat = corners.map(projection.flat);
  const pointsOf = (indices: readonly number[]): Point[] =>
    indices.flatMap((index) => {
      const point = flat[index];
      return point === undefined ? [] : [point];
    });
  const seen = faces.filter(({ normal }) => dot(normal, projection.eye) > EDGE_ON * length(normal));
  const seenEdges = new Set(seen.flatMap(({ loop }) => edgesOf(loop).map(([a, b]) => edgeKey(a, b))));
  const hidden = new Map<string, readonly [number, number]>();
  for (const [a, b] of faces.flatMap(({ loop }) => edgesOf(loop))) {
    if (!seenEdges.has(edgeKey(a, b))) hidden.set(edgeKey(a, b), [a, b]);
  }
  return {
    faces: seen.map(({ loop }) => pointsOf(loop)),
    hiddenEdges: [...hidden.values()].flatMap((edge) => {
      const [a, b] = pointsOf(edge);
      return a === undefined || b === undefined ? [] : [[a, b] as const];
    }),
  };
}
