import { edgeBetween } from './edge.ts';
import type { Contour, Path } from './contour.ts';
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
  const origin = startOf(outside);
  const whole = sumsOf(outside, origin);
  // Either way round, an outside counts in full and a hole is taken away.
  const turned = whole.area < 0 ? -1 : 1;
  let [area, x, y] = [turned * whole.area, turned * whole.x, turned * whole.y];
  for (const hole of holes) {
    const less = sumsOf(hole, origin);
    const taken = less.area < 0 ? -1 : 1;
    area -= taken * less.area;
    x -= taken * less.x;
    y -= taken * less.y;
  }
  return { area, centre: [origin[0] + x / area, origin[1] + y / area] };
}

function startOf(contour: Contour): Point {
  if (contour.kind === 'circle') return contour.centre;
  const [first] = contour.vertices;
  return first ? [first.x, first.y] : [0, 0];
}

/** Signed area of a contour, and area times the offset of its middle from the origin. */
interface Sums {
  readonly area: number;
  readonly x: number;
  readonly y: number;
}

function sumsOf(contour: Contour, origin: Point): Sums {
  if (contour.kind === 'path') return sumsAlong(contour, origin);
  const { centre, radius } = contour;
  const area = Math.PI * radius * radius;
  return { area, x: area * (centre[0] - origin[0]), y: area * (centre[1] - origin[1]) };
}

/** Triangles from the origin, and the cap of each arc. */
function sumsAlong({ vertices, closed }: Path, origin: Point): Sums {
  let [area, x, y] = [0, 0, 0];
  const count = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < count; i++) {
    const from = vertices[i];
    const to = vertices[i + 1] ?? vertices[0];
    if (!from || !to) continue;
    const ax = from.x - origin[0];
    const ay = from.y - origin[1];
    const bx = to.x - origin[0];
    const by = to.y - origin[1];
    const triangle = (ax * by - ay * bx) / 2;
    area += triangle;
    x += (triangle * (ax + bx)) / 3;
    y += (triangle * (ay + by)) / 3;
    const edge = from.bulge === 0 ? null : edgeBetween(from, to);
    if (edge?.kind !== 'arc') continue;
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
