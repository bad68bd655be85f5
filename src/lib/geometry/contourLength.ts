import { edgesOf } from './edge.ts';
import { apart } from './plane.ts';
import type { Contour } from './contour.ts';

/** Length of the way along a contour, mm; arcs in closed form. */
export const contourLength = (contour: Contour): number =>
  edgesOf(contour).reduce(
    (sum, edge) => sum + (edge.kind === 'arc' ? edge.radius * Math.abs(edge.sweep) : apart(edge.start, edge.end)),
    0,
  );
