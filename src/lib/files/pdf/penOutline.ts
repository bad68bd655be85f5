import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import type { Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Outline, OutlinePoint } from './outline.ts';

/** Arcs are drawn in straight pieces that turn by no more than this, radians: 15°. */
const PIECE = Math.PI / 12;
/** Corners of a round end. */
const ROUND = 6;

/** What a round pen leaves that follows the paths: a rounded bar a piece, which together fill it. Font units. */
export const penOutline = (paths: readonly Path[], scale: number, pen: number): Outline =>
  paths
    .flatMap((path) => edgesOf(path))
    .flatMap((edge) => {
      const pieces = edge.kind === 'arc' ? Math.ceil(Math.abs(edge.sweep) / PIECE) : 1;
      return Array.from({ length: pieces }, (_, i) =>
        bar(scaled(pointAt(edge, i / pieces), scale), scaled(pointAt(edge, (i + 1) / pieces), scale), pen / 2),
      );
    });

const scaled = ([x, y]: Point, scale: number): Point => [x * scale, y * scale];

/** Clockwise, as outer outlines of TrueType run. */
function bar(from: Point, to: Point, half: number): OutlinePoint[] {
  const way = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const end = ([x, y]: Point, start: number): OutlinePoint[] =>
    Array.from({ length: ROUND + 1 }, (_, i) => {
      const angle = start - (Math.PI * i) / ROUND;
      return { x: Math.round(x + half * Math.cos(angle)), y: Math.round(y + half * Math.sin(angle)), on: true };
    });
  return [...end(to, way + Math.PI / 2), ...end(from, way - Math.PI / 2)];
}
