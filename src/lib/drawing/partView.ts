import type { Contour } from '$lib/geometry/contour.ts';
import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Item, View } from './view.ts';

/** Corners of the polygon that stands for an arc, for a full turn: 0.1 % of the radius from the true one at most. */
const STEPS = 72;

/** One part at its finished size, with its greatest width and height. */
export function partView({ name, outside, inside, mark }: Part): View {
  const { left, right, bottom, top } = extentOf(outside);
  return {
    name: `Part ${name}`,
    extent: [left, bottom, right, top],
    items: [
      outline('outside', outside, 'wide', true),
      ...inside.map((hole, i): Item =>
        hole.kind === 'circle'
          ? { kind: 'round', id: `hole-${i}`, subject: 'desk', pen: 'wide', centre: hole.centre, radius: hole.radius, filled: true } // prettier-ignore
          : { ...outline(`hole-${i}`, hole, 'wide', true), subject: 'desk' },
      ),
      ...mark.map((contour, i) => outline(`mark-${i}`, contour, 'narrow', false)),
      size('width', [left, bottom], [right, bottom], 'across', right - left),
      size('height', [right, bottom], [right, top], 'up', top - bottom),
    ],
  };
}

const size = (name: string, from: Point, to: Point, run: 'across' | 'up', value: number): Item => ({
  kind: 'dimension',
  id: name,
  subject: 'stand',
  from,
  to,
  run,
  row: run === 'across' ? -1 : 1,
  value,
  name,
});

const outline = (id: string, contour: Contour, pen: 'wide' | 'narrow', filled: boolean) =>
  ({
    kind: 'outline',
    id,
    subject: 'stand',
    pen,
    points: pointsOf(contour),
    closed: contour.kind === 'circle' || contour.closed,
    filled,
  }) as const;

/** The contour as corners to draw, arcs finely divided. */
export function pointsOf(contour: Contour): Point[] {
  const edges = edgesOf(contour);
  const points = edges.flatMap((edge) => {
    if (edge.kind !== 'arc') return [edge.start];
    const count = Math.max(1, Math.ceil((Math.abs(edge.sweep) / (2 * Math.PI)) * STEPS));
    return Array.from({ length: count }, (_, i) => pointAt(edge, i / count));
  });
  const last = edges.at(-1);
  return last && contour.kind === 'path' && !contour.closed ? [...points, last.end] : points;
}
