import type { Path } from '$lib/geometry/contour.ts';
import { edgesOf, heading, pointAt, type ArcEdge, type Edge } from '$lib/geometry/edge.ts';
import { inner, minus, outer, shifted } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';

/** A corner of a contour as it is set out: where its edges meet, drawn out, and the radius that rounds it off. mm. */
export interface Corner {
  readonly at: Point;
  /** 0 for a sharp corner. */
  readonly radius: number;
}

/** Sine of the largest turn between two edges that is rounding of coordinates, not a corner. */
const SMOOTH = 1e-6;
/** An arc that turns further is told as several: where the ends of a longer one meet is far out. Radians, 120°. */
const FURTHEST = (2 * Math.PI) / 3;
/** Corners that lie less above each other, mm, are equally low. */
const LEVEL = 1e-6;

/**
 * The corners of a closed path in its own order, from the one that is lowest, then furthest left. An arc is a corner
 * rounded off; where it does not run smoothly into the next edge, there is a sharp one at its end too.
 */
export function cornersOf(path: Path): readonly Corner[] {
  const edges = edgesOf(path);
  const corners = edges.flatMap((edge, i): Corner[] => {
    const meets: Corner[] = isSmooth(edges.at(i - 1) ?? edge, edge) ? [] : [{ at: edge.start, radius: 0 }];
    return edge.kind === 'straight' ? meets : [...meets, ...roundings(edge)];
  });
  return fromLowest(corners);
}

/** Whether two edges with an arc among them meet without a corner. */
function isSmooth(one: Edge, next: Edge): boolean {
  if (one.kind === 'straight' && next.kind === 'straight') return false;
  const [arriving, leaving] = [heading(one, 'end'), heading(next, 'start')];
  return inner(arriving, leaving) > 0 && Math.abs(outer(arriving, leaving)) < SMOOTH;
}

function roundings(arc: ArcEdge): readonly Corner[] {
  const count = Math.ceil(Math.abs(arc.sweep) / FURTHEST);
  const sweep = arc.sweep / count;
  return Array.from({ length: count }, (_, i): Corner => {
    const piece = { ...arc, start: pointAt(arc, i / count), end: pointAt(arc, (i + 1) / count), sweep };
    const reach = arc.radius * Math.tan(Math.abs(sweep) / 2);
    return { at: shifted(piece.start, heading(piece, 'start'), reach), radius: arc.radius };
  });
}

function fromLowest(corners: readonly Corner[]): readonly Corner[] {
  const first = corners.reduce((best, { at }, i) => {
    const [x, y] = minus(at, corners[best]?.at ?? at);
    return y < -LEVEL || (y <= LEVEL && x < 0) ? i : best;
  }, 0);
  return [...corners.slice(first), ...corners.slice(0, first)];
}
