import fc from 'fast-check';
import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import { pointGap } from '$lib/geometry/edgeGap.ts';
import type { Contour, Path } from '$lib/geometry/contour.ts';

const place = fc.double({ noNaN: true, min: -1000, max: 1000 });
/** From an arc of a degree to nearly the whole turn, either way, and straight edges. */
const bulge = fc.oneof(
  fc.constant(0),
  fc.constantFrom(1, -1, Math.SQRT2 - 1, 1 - Math.SQRT2),
  fc.double({ noNaN: true, min: 0.005, max: 20 }),
  fc.double({ noNaN: true, min: -20, max: -0.005 }),
);
const vertex = fc.record({ x: place, y: place, bulge });

/** Any path with edges a cutter could tell apart, crossings and all: writers do not judge. */
export const anyPath: fc.Arbitrary<Path> = fc
  .record({ closed: fc.boolean(), vertices: fc.array(vertex, { minLength: 3, maxLength: 12 }) })
  .map(({ closed, vertices }): Path => ({ kind: 'path', closed, vertices }))
  .filter((path) => edgesOf(path).every(({ start, end }) => Math.hypot(end[0] - start[0], end[1] - start[1]) > 1));

/** How far any of a contour's edges comes from the nearest of the other's, mm, at eight places on each. */
export function straying(from: Contour, to: Contour): number {
  const others = edgesOf(to);
  const samples = edgesOf(from).flatMap((edge) =>
    [0, 1, 2, 3, 4, 5, 6, 7, 8].map((eighth) => pointAt(edge, eighth / 8)),
  );
  return Math.max(...samples.map((point) => Math.min(...others.map((edge) => pointGap(point, edge)))));
}
