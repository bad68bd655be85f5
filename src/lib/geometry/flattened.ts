import { edgesOf, pointAt, type Edge } from './edge.ts';
import type { Path } from './contour.ts';
import type { Point } from './point.ts';

/**
 * The corners of a closed path with every arc as chords that begin and end on it and stay within `sagitta`, mm over 0, of
 * it. Halving the chords takes a quarter of the error.
 */
export const flattened = (path: Path, sagitta: number): Point[] =>
  edgesOf(path).flatMap((edge) => {
    const count = chordsOf(edge, sagitta);
    return Array.from({ length: count }, (_, i) => (i === 0 ? edge.start : pointAt(edge, i / count)));
  });

/** A chord of an arc of `a` radians rises r(1 − cos(a/2)). */
function chordsOf(edge: Edge, sagitta: number): number {
  if (edge.kind === 'straight') return 1;
  const most = 2 * Math.acos(Math.max(0, 1 - sagitta / edge.radius));
  return Math.max(1, Math.ceil(Math.abs(edge.sweep) / most));
}
