import { apart, inner, minus, norm, outer, rightOf, shifted, unit } from './plane.ts';
import { facesArc, fractionOf, type ArcEdge, type Edge, type StraightEdge } from './edge.ts';
import type { Point } from './point.ts';

/** The least distance between two edges, mm; 0 where they touch or cross. Closed form for straights and arcs. */
export function edgeGap(a: Edge, b: Edge): number {
  if (meetings(a, b).length > 0) return 0;
  const ends = Math.min(pointGap(a.start, b), pointGap(a.end, b), pointGap(b.start, a), pointGap(b.end, a));
  return Math.min(ends, innerGap(a, b));
}

/** The least distance of a point from an edge, mm. */
export function pointGap(point: Point, edge: Edge): number {
  if (edge.kind === 'arc') {
    const radial = apart(point, edge.centre);
    if (radial > 0 && facesArc(edge, point)) return Math.abs(radial - edge.radius);
    return Math.min(apart(point, edge.start), apart(point, edge.end));
  }
  const fraction = Math.min(1, Math.max(0, fractionOf(edge, point)));
  return apart(point, shifted(edge.start, minus(edge.end, edge.start), fraction));
}

/** The points where two edges cross or touch. Edges that run along each other have none: their ends tell. */
export function meetings(a: Edge, b: Edge): Point[] {
  if (a.kind === 'straight') return b.kind === 'straight' ? straights(a, b) : straightAndArc(a, b);
  return b.kind === 'straight' ? straightAndArc(b, a) : arcs(a, b);
}

/**
 * Sine of the angle under which two straights count as parallel: rounding of corners on one line makes about as much, and
 * the place where such lines cross is anywhere. Their ends tell how near they come, to the same part of their length.
 */
const PARALLEL = 1e-12;

function straights(a: StraightEdge, b: StraightEdge): Point[] {
  const along = minus(a.end, a.start);
  const other = minus(b.end, b.start);
  const spanned = outer(along, other);
  if (Math.abs(spanned) <= PARALLEL * norm(along) * norm(other)) return [];
  const between = minus(b.start, a.start);
  const here = outer(between, other) / spanned;
  const there = outer(between, along) / spanned;
  return within(here) && within(there) ? [shifted(a.start, along, here)] : [];
}

const within = (fraction: number): boolean => fraction >= 0 && fraction <= 1;

const straightAndArc = (a: StraightEdge, b: ArcEdge): Point[] =>
  lineAndCircle(a.start, minus(a.end, a.start), b.centre, b.radius).filter(
    (point) => within(fractionOf(a, point)) && facesArc(b, point),
  );

const arcs = (a: ArcEdge, b: ArcEdge): Point[] =>
  circles(a.centre, a.radius, b.centre, b.radius).filter((point) => facesArc(a, point) && facesArc(b, point));

/** Where the line through `start` along `direction` meets a circle: none, or two points that coincide when it touches. */
export function lineAndCircle(start: Point, direction: Point, centre: Point, radius: number): Point[] {
  const along = unit(direction);
  const foot = shifted(start, along, inner(minus(centre, start), along));
  const reach = radius * radius - inner(minus(foot, centre), minus(foot, centre));
  if (reach < 0) return [];
  const half = Math.sqrt(reach);
  return [shifted(foot, along, -half), shifted(foot, along, half)];
}

/** Where two circles meet: none, or two points that coincide when they touch. Concentric circles: none. */
export function circles(first: Point, radius: number, second: Point, other: number): Point[] {
  const between = minus(second, first);
  const far = norm(between);
  if (far === 0) return [];
  const along = (far * far + radius * radius - other * other) / (2 * far);
  const reach = radius * radius - along * along;
  if (reach < 0) return [];
  const direction = unit(between);
  const foot = shifted(first, direction, along);
  const half = Math.sqrt(reach);
  return [shifted(foot, rightOf(direction), half), shifted(foot, rightOf(direction), -half)];
}

/** Distances between inner points of edges that do not meet: on the perpendicular from a centre, or the line of centres. */
function innerGap(a: Edge, b: Edge): number {
  if (a.kind === 'straight') return b.kind === 'straight' ? Infinity : footGap(a, b);
  return b.kind === 'straight' ? footGap(b, a) : centresGap(a, b);
}

function footGap(straight: StraightEdge, arc: ArcEdge): number {
  const fraction = fractionOf(straight, arc.centre);
  if (!within(fraction)) return Infinity;
  const foot = shifted(straight.start, minus(straight.end, straight.start), fraction);
  return pointGap(foot, arc);
}

function centresGap(a: ArcEdge, b: ArcEdge): number {
  const direction = unit(minus(b.centre, a.centre));
  const onA = [-1, 1].map((side) => shifted(a.centre, direction, side * a.radius)).filter((p) => facesArc(a, p));
  return Math.min(Infinity, ...onA.map((point) => pointGap(point, b)));
}
