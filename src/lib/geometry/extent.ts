import { edgesOf, facesArc, type Edge } from './edge.ts';
import type { Circle, Contour } from './contour.ts';
import type { Point } from './point.ts';

/** An upright rectangle that bounds something. */
export interface Extent {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The smallest upright rectangle round some contours, arcs taken in full. Without a point: left Infinity, right −Infinity. */
export function extentOf(...contours: readonly Contour[]): Extent {
  const bounds = nothing();
  for (const contour of contours) {
    if (contour.kind === 'circle') takeCircle(bounds, contour);
    else for (const edge of edgesOf(contour)) takeEdge(bounds, edge);
  }
  return bounds;
}

/** The smallest upright rectangle round an edge. */
export function edgeExtent(edge: Edge): Extent {
  const bounds = nothing();
  takeEdge(bounds, edge);
  return bounds;
}

export function around(points: readonly Point[]): Extent {
  const bounds = nothing();
  for (const point of points) take(bounds, point[0], point[1]);
  return bounds;
}

type Bounds = { -readonly [Side in keyof Extent]: Extent[Side] };

const nothing = (): Bounds => ({ left: Infinity, bottom: Infinity, right: -Infinity, top: -Infinity });

function take(bounds: Bounds, x: number, y: number): void {
  bounds.left = Math.min(bounds.left, x);
  bounds.bottom = Math.min(bounds.bottom, y);
  bounds.right = Math.max(bounds.right, x);
  bounds.top = Math.max(bounds.top, y);
}

function takeCircle(bounds: Bounds, { centre, radius }: Circle): void {
  take(bounds, centre[0] - radius, centre[1] - radius);
  take(bounds, centre[0] + radius, centre[1] + radius);
}

function takeEdge(bounds: Bounds, edge: Edge): void {
  take(bounds, edge.start[0], edge.start[1]);
  take(bounds, edge.end[0], edge.end[1]);
  if (edge.kind === 'straight') return;
  const { centre, radius } = edge;
  const compass: readonly Point[] = [
    [centre[0] + radius, centre[1]],
    [centre[0], centre[1] + radius],
    [centre[0] - radius, centre[1]],
    [centre[0], centre[1] - radius],
  ];
  for (const point of compass) if (facesArc(edge, point)) take(bounds, point[0], point[1]);
}
