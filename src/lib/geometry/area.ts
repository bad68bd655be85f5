import { edgesOf } from './edge.ts';
import { outer } from './plane.ts';
import type { Contour } from './contour.ts';

/** The area a closed contour encloses, mm²: positive when it runs counter-clockwise; arcs in closed form. */
export function signedArea(contour: Contour): number {
  if (contour.kind === 'circle') return Math.PI * contour.radius * contour.radius;
  let twice = 0;
  for (const edge of edgesOf(contour)) {
    twice += outer(edge.start, edge.end);
    if (edge.kind === 'arc') twice += edge.radius * edge.radius * (edge.sweep - Math.sin(edge.sweep));
  }
  return twice / 2;
}
