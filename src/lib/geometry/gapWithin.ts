import { convexHull } from './convexHull.ts';
import { apart, inner, minus, norm, outer, shifted } from './plane.ts';
import type { Point } from './point.ts';

/** How far something is from the edge of what it lies on. */
export interface GapWithin {
  /** mm: the least distance to an edge; negative by how far it lies over one. */
  readonly gap: number;
  /** Index of that edge: it leaves the corner of that index. */
  readonly edge: number;
}

/** A simple polygon, counter-clockwise, no two of its corners in one place. */
export interface Outline {
  readonly points: readonly Point[];
  readonly convex: boolean;
}

/** Whether a counter-clockwise polygon turns left at every corner, or runs straight on. */
export const isConvex = (points: readonly Point[]): boolean =>
  points.every((from, i) => {
    const to = points[(i + 1) % points.length] ?? from;
    const next = points[(i + 2) % points.length] ?? to;
    return outer(minus(to, from), minus(next, to)) >= -STRAIGHT * norm(minus(to, from)) * norm(minus(next, to));
  });

/** Sine of the turn to the right that rounding makes of none. */
const STRAIGHT = 1e-12;

/**
 * How far a convex figure is from the edges of an outline, or lies over one. Over an edge counts square
 * to that edge; past a corner by the edge that it is further over.
 */
export function gapWithin(outline: Outline, figure: readonly Point[]): GapWithin {
  const corners = figure.map((point) => pointWithin(outline, point));
  if (outline.convex || figure.length === 0) return least(corners);
  return least([...corners, ...reachingIn(outline, convexHull(figure))]);
}

const least = (all: readonly GapWithin[]): GapWithin =>
  all.reduce((best, one) => (one.gap < best.gap ? one : best), { gap: Infinity, edge: 0 });

/** The same of a point. */
export function pointWithin({ points, convex }: Outline, point: Point): GapWithin {
  let [nearest, square, straight] = [Infinity, 0, Infinity];
  let [edge, lowest] = [0, 0];
  let inside = false;
  for (let i = 0; i < points.length; i++) {
    const from = points[i] ?? point;
    const to = points[i + 1 === points.length ? 0 : i + 1] ?? from;
    const height = over(point, from, to);
    if (height < straight) [straight, lowest] = [height, i];
    if (convex) continue;
    if (to[1] > point[1] !== from[1] > point[1] && to[1] > point[1] === height > 0) inside = !inside;
    const { far, end } = toEdge(point, from, to);
    const out = end ? Math.max(0, -height) : far;
    if (far < nearest || (far === nearest && out > square)) [nearest, square, edge] = [far, out, i];
  }
  if (convex) return { gap: straight, edge: lowest };
  return { gap: inside ? nearest : -square, edge };
}

/** How far a point lies to the left of the line through two others, mm; negative to the right. */
const over = (point: Point, from: Point, to: Point): number => {
  const along = minus(to, from);
  // Along an axis without the rounding of a product: what lies 30 in front lies 30 in front.
  if (along[1] === 0) return along[0] > 0 ? point[1] - from[1] : from[1] - point[1];
  if (along[0] === 0) return along[1] > 0 ? from[0] - point[0] : point[0] - from[0];
  return outer(along, minus(point, from)) / norm(along);
};

/** Distance of a point from an edge, and whether it is nearest to one of the edge's ends. */
function toEdge(point: Point, from: Point, to: Point): { readonly far: number; readonly end: boolean } {
  const along = minus(to, from);
  const share = inner(minus(point, from), along) / inner(along, along);
  if (share <= 0) return { far: apart(point, from), end: true };
  if (share >= 1) return { far: apart(point, to), end: true };
  return { far: apart(point, shifted(from, along, share)), end: false };
}

/** What of an outline that turns inwards somewhere comes near the figure between its corners, or into it. */
const reachingIn = ({ points }: Outline, figure: readonly Point[]): GapWithin[] =>
  points.flatMap((from, i) => {
    const to = points[(i + 1) % points.length] ?? from;
    const part = partInside(from, to, figure);
    const reach = part === null ? 0 : pointWithin({ points: figure, convex: true }, part).gap;
    if (reach > 0) return [{ gap: -reach, edge: i }];
    const outside = pointWithin({ points: figure, convex: false }, from).gap;
    return outside <= 0 ? [{ gap: distanceTo(from, figure), edge: i }] : [];
  });

const distanceTo = (point: Point, figure: readonly Point[]): number =>
  Math.min(...figure.map((from, i) => toEdge(point, from, figure[(i + 1) % figure.length] ?? from).far));

/** The middle of what of an edge lies in a convex figure; null where nothing does. */
function partInside(from: Point, to: Point, figure: readonly Point[]): Point | null {
  let [start, end] = [0, 1];
  for (const [i, a] of figure.entries()) {
    const b = figure[(i + 1) % figure.length] ?? a;
    const [here, there] = [over(from, a, b), over(to, a, b)];
    if (here < 0 && there < 0) return null;
    if (here < 0) start = Math.max(start, here / (here - there));
    if (there < 0) end = Math.min(end, here / (here - there));
  }
  return end > start ? shifted(from, minus(to, from), (start + end) / 2) : null;
}
