import { around } from '$lib/geometry/extent.ts';
import { edgesOf, fractionOf, pointAt, type Edge } from '$lib/geometry/edge.ts';
import { isInsideEdges } from '$lib/geometry/inside.ts';
import { meetings, pointGap } from '$lib/geometry/edgeGap.ts';
import { openPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';

/** mm. Closer than this two outlines touch: a thousandth of what files keep, a million times the dust of doubles. */
export const TOUCH = 1e-6;

/**
 * Whether two outlines that meet overlap by more than `TOUCH`, rather than touch. An outline that enters another has a
 * stretch between two meeting points inside it; one that coincides with another has its own inside in common.
 */
export const overlap = (a: readonly Edge[], b: readonly Edge[]): boolean =>
  enters(a, b) || enters(b, a) || [innerPoint(a), innerPoint(b)].some((point) => deep(point, a) && deep(point, b));

const enters = (a: readonly Edge[], b: readonly Edge[]): boolean =>
  a.some((edge) => stretches(edge, b).some((point) => deep(point, b)));

const deep = (point: Point | null, outline: readonly Edge[]): boolean =>
  point !== null && isInsideEdges(point, outline) && outline.every((edge) => pointGap(point, edge) > TOUCH);

/** The middle of every stretch of an edge between the places where the outline meets it. */
function stretches(edge: Edge, outline: readonly Edge[]): Point[] {
  const meets = outline.flatMap((other) => [
    ...meetings(edge, other),
    ...[other.start, other.end].filter((end) => pointGap(end, edge) <= TOUCH),
  ]);
  const stops = [0, 1, ...meets.map((point) => fractionOf(edge, point))]
    .filter((fraction) => fraction >= 0 && fraction <= 1)
    .sort((a, b) => a - b);
  return stops.slice(1).map((stop, i) => pointAt(edge, (stop + (stops[i] ?? 0)) / 2));
}

/** A share of the height at which a level line hardly ever runs through a corner or along an edge. */
const LEVEL = 0.4871;

/** A point well inside an outline: the middle of its widest stretch at one level. Null for an outline without an inside. */
function innerPoint(outline: readonly Edge[]): Point | null {
  const { left, bottom, right, top } = around(outline.flatMap(({ start, end }) => [start, end]));
  const y = bottom + LEVEL * (top - bottom);
  const reach = right - left + top - bottom;
  const level = edgesOf(
    openPath([
      [left - reach, y],
      [right + reach, y],
    ]),
  ).flatMap((line) => outline.flatMap((edge) => meetings(line, edge)));
  const places = level.map(([x]) => x).sort((a, b) => a - b);
  const middles = places.slice(1).map((x, i) => ({ x: (x + (places[i] ?? x)) / 2, width: x - (places[i] ?? x) }));
  const inside = middles.filter(({ x }) => isInsideEdges([x, y], outline)).sort((a, b) => b.width - a.width)[0];
  return inside === undefined ? null : [inside.x, y];
}
