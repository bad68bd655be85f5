import type { Point } from './point.ts';

/**
 * A corner of a path. `bulge` shapes the edge that leaves it: the tangent of a quarter of the arc's angle, positive when
 * the arc turns counter-clockwise, 0 for a straight edge (the convention of DXF's polylines).
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** Straight and circular edges in order. Closed paths do not repeat their first vertex. */
export interface Path {
  readonly kind: 'path';
  readonly closed: boolean;
  readonly vertices: readonly Vertex[];
}

export interface Circle {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
}

/** What a cutter follows: plain data that every writer draws in its own way. Millimetres. */
export type Contour = Path | Circle;

/** A closed path with straight edges through the points. */
export const polygonPath = (points: readonly Point[]): Path => ({
  kind: 'path',
  closed: true,
  vertices: points.map(([x, y]) => ({ x, y, bulge: 0 })),
});

/** An open path with straight edges through the points. */
export const openPath = (points: readonly Point[]): Path => ({ ...polygonPath(points), closed: false });

export const circle = (centre: Point, radius: number): Circle => ({ kind: 'circle', centre, radius });
