import { apart, inner, middle, minus, outer, rightOf, shifted, unit } from './plane.ts';
import { circles, lineAndCircle } from './edgeGap.ts';
import { heading, type ArcEdge, type Edge } from './edge.ts';
import type { Point } from './point.ts';

/**
 * A mitre may reach this many distances from its corner; a sharper corner (under about 29°) is squared off at exactly one
 * distance instead. Nothing is lost by it: either way the grown contour keeps its distance from the corner.
 */
export const MITRE_LIMIT = 4;

/** Sine of the turn under which two edges count as running on smoothly: their moved ends differ by less than the same part. */
const SMOOTH = 1e-9;

/**
 * The points that join two edges moved by `right` mm to the right of their travel, from the end of the first to the start
 * of the second: one for a mitre or a smooth join, more round a corner that is squared off or at which an arc ends. An arc
 * is never lengthened: beyond its end its tangent takes over. Null when the moved edges fail to meet.
 */
export function growCorner(first: Edge, second: Edge, right: number): Point[] | null {
  const arriving = heading(first, 'end');
  const leaving = heading(second, 'start');
  const corner = second.start;
  const end = shifted(corner, rightOf(arriving), right);
  const start = shifted(corner, rightOf(leaving), right);
  const bend = outer(arriving, leaving);
  if (Math.abs(bend) < SMOOTH && inner(arriving, leaving) > 0) return [middle(end, start)];
  if (bend * right < 0) return trimmed(first, second, corner, right);
  const tip = tipOf(corner, arriving, leaving, right);
  return [...(first.kind === 'arc' ? [end] : []), ...tip, ...(second.kind === 'arc' ? [start] : [])];
}

/** The corner on the side where the moved edges part: the mitre, or its tip cut off square. */
function tipOf(corner: Point, arriving: Point, leaving: Point, right: number): Point[] {
  const mitred = mitre(corner, arriving, leaving, right);
  if (apart(mitred, corner) <= MITRE_LIMIT * Math.abs(right)) return [mitred];
  const ahead = unit(minus(arriving, leaving));
  const run = (normal: Point): number =>
    (Math.abs(right) - right * inner(normal, ahead)) / Math.abs(inner(arriving, ahead));
  const [before, after] = [rightOf(arriving), rightOf(leaving)];
  return [
    shifted(shifted(corner, before, right), arriving, run(before)),
    shifted(shifted(corner, after, right), leaving, -run(after)),
  ];
}

/** Where the two tangents, moved to the right, meet. */
function mitre(corner: Point, arriving: Point, leaving: Point, right: number): Point {
  const normals = shifted(rightOf(arriving), rightOf(leaving));
  return shifted(corner, normals, right / (1 + inner(arriving, leaving)));
}

/** The corner on the side where the moved edges overlap: where they cross, near the corner. */
function trimmed(first: Edge, second: Edge, corner: Point, right: number): Point[] | null {
  const [arriving, leaving] = [heading(first, 'end'), heading(second, 'start')];
  if (first.kind === 'straight' && second.kind === 'straight') return [mitre(corner, arriving, leaving, right)];
  const meetings =
    first.kind === 'arc'
      ? second.kind === 'arc'
        ? circles(first.centre, radius(first, right), second.centre, radius(second, right))
        : onCircle(first, shifted(corner, rightOf(leaving), right), leaving, right)
      : second.kind === 'arc'
        ? onCircle(second, shifted(corner, rightOf(arriving), right), arriving, right)
        : [];
  const nearest = [...meetings].sort((a, b) => apart(a, corner) - apart(b, corner))[0];
  return nearest === undefined ? null : [nearest];
}

const radius = (arc: ArcEdge, right: number): number => arc.radius + Math.sign(arc.sweep) * right;

const onCircle = (arc: ArcEdge, start: Point, direction: Point, right: number): Point[] =>
  lineAndCircle(start, direction, arc.centre, radius(arc, right));
