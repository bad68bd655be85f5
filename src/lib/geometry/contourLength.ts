import { edgesOf } from './edge.ts';
import { apart } from './plane.ts';
import type { Contour } from './contour.ts';

/** Length of the way along a contour, mm; arcs in closed form. */
export function contourLength(contour: Contour): number {
  if (contour.kind === 'circle') return 2 * Math.PI * contour.radius;
  let length = 0;
  for (const edge of edgesOf(contour)) {
    length += edge.kind === 'arc' ? edge.radius * Math.abs(edge.sweep) : apart(edge.start, edge.end);
  }
  return length;
}
