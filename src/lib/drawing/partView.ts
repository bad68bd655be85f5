import type { Circle, Contour, Path } from '$lib/geometry/contour.ts';
import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Part } from '$lib/workshop/part.ts';
import { cornersOf } from './partCorners.ts';
import { isDimensioned, overallDimensions, partDimensions } from './partDimensions.ts';
import { letterOf } from './partPoints.ts';
import type { Item, View } from './view.ts';

/** Corners of the polygon that stands for an arc, for a full turn: 0.1 % of the radius from the true one at most. */
const STEPS = 72;
/** Corners of an outline that are numbered on its drawing: four stand apart at any scale. */
const MOST_NUMBERED = 4;

/**
 * One part at its finished size with what it is made to: on dimension lines, or, where a list of its points has that
 * (`setOut`), only its greatest sizes, in brackets, and names of points.
 *
 * @param dimensioned Whether on lines; default where they can say all of it.
 */
export function partView(
  name: string,
  part: Pick<Part, 'outside' | 'inside' | 'mark'>,
  dimensioned = isDimensioned(part),
): View {
  const { outside, inside, mark } = part;
  const { left, right, bottom, top } = extentOf(outside);
  return {
    name,
    extent: [left, bottom, right, top],
    items: [
      outline('outside', outside, 'wide', true),
      ...inside.map((hole, i): Item =>
        hole.kind === 'circle'
          ? { kind: 'round', id: `hole-${i}`, subject: 'desk', pen: 'wide', centre: hole.centre, radius: hole.radius, filled: true } // prettier-ignore
          : { ...outline(`hole-${i}`, hole, 'wide', true), subject: 'desk' },
      ),
      ...mark.map((contour, i) => outline(`mark-${i}`, contour, 'narrow', false)),
      ...(dimensioned
        ? partDimensions(part)
        : [...overallDimensions(part), ...numbersAt(outside), ...inside.map(letterAt)]),
    ],
  };
}

/** The numbers of an outline's corners, outside it; none where there are so many that they would stand on each other. */
function numbersAt(outside: Path): readonly Item[] {
  const corners = cornersOf(outside);
  if (corners.length > MOST_NUMBERED) return [];
  const { left, right, bottom, top } = extentOf(outside);
  return corners.map(({ at: [x, y] }, i): Item => {
    const [rightwards, up] = [x > (left + right) / 2, y > (bottom + top) / 2];
    const shift: Point = [rightwards ? 0.5 : -0.5, up ? -0.9 : 0.9];
    return { kind: 'label', id: `number-${i}`, subject: 'stand', text: `${i + 1}`, at: [x, y], anchor: rightwards ? 'start' : 'end', shift }; // prettier-ignore
  });
}

/** A letter in the middle of a hole, or beside one that is no larger than a rod. */
function letterAt(hole: Path | Circle, i: number): Item {
  const { left, right, bottom, top } = extentOf(hole);
  const at: Point = [(left + right) / 2, (bottom + top) / 2];
  const label = { kind: 'label', id: `letter-${i}`, subject: 'stand', text: letterOf(i), at } as const;
  return hole.kind === 'circle' ? { ...label, anchor: 'start', shift: [0.6, -0.8] } : { ...label, anchor: 'middle' };
}

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
