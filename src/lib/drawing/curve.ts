import type { Point } from '$lib/geometry/point.ts';

/** Pieces between two knots. */
const PIECES = 6;

const blend = (a: number, b: number, c: number, d: number, t: number): number =>
  0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t * t * t);

/** A smooth open line through the knots (E. Catmull and R. Rom's spline, 1974), as points. It passes every knot. */
export function smoothThrough(knots: readonly Point[]): Point[] {
  const at = (index: number): Point => knots[Math.max(0, Math.min(knots.length - 1, index))] ?? [0, 0];
  const points = knots.slice(0, -1).flatMap((_, index) =>
    Array.from({ length: PIECES }, (_unused, piece): Point => {
      const [a, b, c, d] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
      const t = piece / PIECES;
      return [blend(a[0], b[0], c[0], d[0], t), blend(a[1], b[1], c[1], d[1], t)];
    }),
  );
  return [...points, at(knots.length - 1)];
}

/** An ellipse with its axes along the view's, as points, counter-clockwise from its right end. */
export const ellipse = ([x, y]: Point, across: number, up: number, steps = 48): Point[] =>
  Array.from({ length: steps }, (_, step): Point => {
    const angle = (2 * Math.PI * step) / steps;
    return [x + across * Math.cos(angle), y + up * Math.sin(angle)];
  });
