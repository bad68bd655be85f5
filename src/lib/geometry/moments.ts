import { edgesOf, type Edge } from './edge.ts';
import { outer } from './plane.ts';
import type { Contour } from './contour.ts';
import type { Point } from './point.ts';

/** A plane figure, one contour or several with holes taken away. */
export interface Moments {
  /** mm², positive. */
  readonly area: number;
  /** Middle of the area. */
  readonly centre: Point;
}

/**
 * Area and its middle of an outside less its holes, whichever way they run; arcs in closed form. Summed from the outside's
 * first corner, so that a figure far from the origin keeps its digits.
 */
export function momentsOf(outside: Contour, holes: readonly Contour[] = []): Moments {
  const whole = edgesOf(outside);
  const origin = whole[0]?.start ?? [0, 0];
  let [area, x, y] = [0, 0, 0];
  const count = (edges: readonly Edge[], sign: 1 | -1): void => {
    const sums = sumsOf(edges, origin);
    const turned = sums.area < 0 ? -sign : sign;
    area += turned * sums.area;
    x += turned * sums.x;
    y += turned * sums.y;
  };
  count(whole, 1);
  for (const hole of holes) count(edgesOf(hole), -1);
  return { area, centre: [origin[0] + x / area, origin[1] + y / area] };
}

/** Signed area, and area times the offset of its middle from the origin: triangles from there, and the cap of each arc. */
function sumsOf(edges: readonly Edge[], origin: Point): { area: number; x: number; y: number } {
  let [area, x, y] = [0, 0, 0];
  for (const edge of edges) {
    const a: Point = [edge.start[0] - origin[0], edge.start[1] - origin[1]];
    const b: Point = [edge.end[0] - origin[0], edge.end[1] - origin[1]];
    const triangle = outer(a, b) / 2;
    area += triangle;
    x += (triangle * (a[0] + b[0])) / 3;
    y += (triangle * (a[1] + b[1])) / 3;
    if (edge.kind === 'straight') continue;
    const { centre, radius, sweep } = edge;
    const cap = (radius * radius * (sweep - Math.sin(sweep))) / 2;
    const beyond = (2 / 3) * radius ** 3 * Math.sin(sweep / 2) ** 3;
    const middle = Math.atan2(edge.start[1] - centre[1], edge.start[0] - centre[0]) + sweep / 2;
    area += cap;
    x += cap * (centre[0] - origin[0]) + beyond * Math.cos(middle);
    y += cap * (centre[1] - origin[1]) + beyond * Math.sin(middle);
  }
  return { area, x, y };
}
