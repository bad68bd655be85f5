import { edgesOf } from './edge.ts';
import { outer } from './plane.ts';
import { signedArea } from './area.ts';
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
  const origin = edgesOf(outside)[0]?.start ?? [0, 0];
  const all = [outside, ...holes].map((contour, i) => {
    const area = signedArea(contour);
    const sign = (i === 0 ? 1 : -1) * Math.sign(area);
    const [x, y] = firstMoments(contour, origin);
    return { area: sign * area, x: sign * x, y: sign * y };
  });
  const sum = all.reduce((a, b) => ({ area: a.area + b.area, x: a.x + b.x, y: a.y + b.y }));
  return { area: sum.area, centre: [origin[0] + sum.x / sum.area, origin[1] + sum.y / sum.area] };
}

/** Area times the offset of its middle from the origin: triangles from the origin, and the cap of each arc. */
function firstMoments(contour: Contour, origin: Point): Point {
  let [x, y] = [0, 0];
  for (const edge of edgesOf(contour)) {
    const a: Point = [edge.start[0] - origin[0], edge.start[1] - origin[1]];
    const b: Point = [edge.end[0] - origin[0], edge.end[1] - origin[1]];
    const triangle = outer(a, b) / 2;
    x += (triangle * (a[0] + b[0])) / 3;
    y += (triangle * (a[1] + b[1])) / 3;
    if (edge.kind === 'straight') continue;
    const { centre, radius, sweep } = edge;
    const cap = (radius * radius * (sweep - Math.sin(sweep))) / 2;
    const beyond = (2 / 3) * radius ** 3 * Math.sin(sweep / 2) ** 3;
    const middle = Math.atan2(edge.start[1] - centre[1], edge.start[0] - centre[0]) + sweep / 2;
    x += cap * (centre[0] - origin[0]) + beyond * Math.cos(middle);
    y += cap * (centre[1] - origin[1]) + beyond * Math.sin(middle);
  }
  return [x, y];
}
