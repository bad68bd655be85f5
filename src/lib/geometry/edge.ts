import { apart, minus, rightOf, shifted, unit } from './plane.ts';
import type { Point } from './point.ts';
import type { Contour, Vertex } from './contour.ts';

export interface StraightEdge {
  readonly kind: 'straight';
  readonly start: Point;
  readonly end: Point;
}

export interface ArcEdge {
  readonly kind: 'arc';
  readonly start: Point;
  readonly end: Point;
  readonly centre: Point;
  readonly radius: number;
  /** Radians from start to end, positive counter-clockwise, under a full turn in size. */
  readonly sweep: number;
}

/** One piece of a contour with its geometry worked out. */
export type Edge = StraightEdge | ArcEdge;

/** The edges of a contour in order. Edges without length are left out; a circle is two half turns. */
export function edgesOf(contour: Contour): Edge[] {
  if (contour.kind === 'circle') {
    const { centre, radius } = contour;
    const east: Point = [centre[0] + radius, centre[1]];
    const west: Point = [centre[0] - radius, centre[1]];
    return [
      { kind: 'arc', start: east, end: west, centre, radius, sweep: Math.PI },
      { kind: 'arc', start: west, end: east, centre, radius, sweep: Math.PI },
    ];
  }
  const edges: Edge[] = [];
  let from: Vertex | undefined;
  for (const to of contour.vertices) {
    if (from) addEdge(edges, from, to);
    from = to;
  }
  const [first] = contour.vertices;
  if (contour.closed && from && first) addEdge(edges, from, first);
  return edges;
}

function addEdge(edges: Edge[], from: Vertex, to: Vertex): void {
  const edge = edgeBetween(from, to);
  if (edge) edges.push(edge);
}

/**
 * Tangent of a quarter of the arc's angle. A flatter arc rises less than a ten-millionth of half its chord and its radius
 * is so long that doubles can no longer place its centre: it counts as straight.
 */
const FLAT = 1e-7;

/** The edge from one corner to the next; null when it has no length. */
export function edgeBetween(from: Vertex, to: Vertex): Edge | null {
  if (from.x === to.x && from.y === to.y) return null;
  const start: Point = [from.x, from.y];
  const end: Point = [to.x, to.y];
  const { bulge } = from;
  if (Math.abs(bulge) < FLAT) return { kind: 'straight', start, end };
  const chord = minus(end, start);
  const mid = shifted(start, chord, 0.5);
  return {
    kind: 'arc',
    start,
    end,
    centre: shifted(mid, rightOf(chord), -(1 - bulge * bulge) / (4 * bulge)),
    radius: (apart(start, end) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    sweep: 4 * Math.atan(bulge),
  };
}

const turn = 2 * Math.PI;

/** How far along an arc, as an angle in the arc's own direction, the direction from its centre to `point` lies: 0…2π. */
export function angleAlong(arc: ArcEdge, point: Point): number {
  const from = minus(arc.start, arc.centre);
  const to = minus(point, arc.centre);
  const angle = Math.sign(arc.sweep) * (Math.atan2(to[1], to[0]) - Math.atan2(from[1], from[0]));
  return ((angle % turn) + turn) % turn;
}

/** Whether the ray from the arc's centre through `point` meets the arc. */
export const facesArc = (arc: ArcEdge, point: Point): boolean => angleAlong(arc, point) <= Math.abs(arc.sweep);

/** The point of an edge at `fraction` of its length, 0…1. */
export function pointAt(edge: Edge, fraction: number): Point {
  if (edge.kind === 'straight') return shifted(edge.start, minus(edge.end, edge.start), fraction);
  const from = minus(edge.start, edge.centre);
  const angle = Math.atan2(from[1], from[0]) + edge.sweep * fraction;
  return [edge.centre[0] + edge.radius * Math.cos(angle), edge.centre[1] + edge.radius * Math.sin(angle)];
}

/** Where on the edge, 0…1, the point nearest its carrying line or circle lies; outside 0…1 beyond the ends of a straight. */
export function fractionOf(edge: Edge, point: Point): number {
  if (edge.kind === 'arc') return angleAlong(edge, point) / Math.abs(edge.sweep);
  const along = minus(edge.end, edge.start);
  const to = minus(point, edge.start);
  return (to[0] * along[0] + to[1] * along[1]) / (along[0] * along[0] + along[1] * along[1]);
}

/** Unit direction of travel at one end of the edge. */
export function heading(edge: Edge, at: 'start' | 'end'): Point {
  if (edge.kind === 'straight') return unit(minus(edge.end, edge.start));
  const outward = unit(minus(edge[at], edge.centre));
  const right = rightOf(outward);
  return edge.sweep > 0 ? [-right[0], -right[1]] : right;
}
