import type { Path, Vertex } from './contour.ts';
import { edgesOf, heading, type ArcEdge, type Edge } from './edge.ts';
import { edgeGap } from './edgeGap.ts';
import { apart, inner, outer, rightOf, shifted, unit } from './plane.ts';
import type { Point } from './point.ts';

/** Two edges that turn less than this, radians, run on: rounding of their ends. */
const RUNS_ON = 1e-6;

/** mm. What has to be left between a relief and everything but its own two edges: the last digit that files keep. */
const LEFT = 1e-3;

/**
 * A closed path whose sharp inner corners are relieved for a round bit: each is replaced by an arc through the corner, its
 * centre on the bisector, so that all of the sharp corner lies in the opening and what is square seats in it. Wood lies on
 * the left of the path, so an inner corner is one that turns right, in an outside as in a hole.
 *
 * With an opening of angle A the arc starts and ends at 2r·cos(A/2) from the corner and reaches r(1 − sin(A/2)) into each
 * of the two edges. Under 90° it narrows behind its mouth; there r grows until the bit passes.
 *
 * A corner stays sharp where one of its edges is an arc or has no room, or the relief would meet another part of the path.
 *
 * @param radius Of the arcs, mm, over 0: more than the bit's.
 */
export function relieveCorners(path: Path, radius: number): Path {
  const edges = edgesOf(path);
  const wished = edges.map((edge, i) => reliefBetween(edges.at(i - 1) ?? edge, edge, radius));
  const reliefs = wished.map((relief, i) => (relief && hasRoom(relief, i, edges, wished) ? relief : null));
  if (reliefs.every((relief) => relief === null)) return path;
  const vertices = edges.flatMap((edge, i) => {
    const relief = reliefs[i];
    const bulge = edge.kind === 'arc' ? Math.tan(edge.sweep / 4) : 0;
    return relief
      ? [vertex(relief.start, Math.tan(relief.sweep / 4)), vertex(relief.end, bulge)]
      : [vertex(edge.start, bulge)];
  });
  return { kind: 'path', closed: true, vertices };
}

const vertex = ([x, y]: Point, bulge: number): Vertex => ({ x, y, bulge });

/** The arc in place of the corner between two straight edges; null where they are none, or do not turn right. */
function reliefBetween(before: Edge, after: Edge, least: number): ArcEdge | null {
  if (before.kind === 'arc' || after.kind === 'arc') return null;
  const [arriving, leaving] = [heading(before, 'end'), heading(after, 'start')];
  const right = -Math.atan2(outer(arriving, leaving), inner(arriving, leaving));
  if (right <= RUNS_ON) return null;
  const radius = least * Math.max(1, wideningFor(right));
  const reach = 2 * radius * Math.sin(right / 2);
  const corner = after.start;
  return {
    kind: 'arc',
    start: shifted(corner, arriving, -reach),
    end: shifted(corner, leaving, reach),
    centre: shifted(corner, unit(shifted(rightOf(arriving), rightOf(leaving))), radius),
    radius,
    sweep: -2 * right,
  };
}

/**
 * How many times the bit's radius an arc needs for the bit's middle to pass its mouth, 2r·sin A wide, when it keeps its
 * distance from both rims in mitred corners. 1 at 90°, less where it is wider.
 */
function wideningFor(right: number): number {
  if (right <= Math.PI / 2) return 1;
  return Math.sin((3 * right) / 4) / (Math.cos(right / 4) * Math.sin(right));
}

/** Whether a relief, at the start of the edge of the same index, leaves all other edges and reliefs alone. */
function hasRoom(
  relief: ArcEdge,
  index: number,
  edges: readonly Edge[],
  reliefs: readonly (ArcEdge | null)[],
): boolean {
  const before = (index + edges.length - 1) % edges.length;
  const reachAt = (i: number): number => {
    const [at, edge] = [reliefs[i % edges.length], edges[i % edges.length]];
    return at && edge ? apart(at.end, edge.start) : 0;
  };
  const fits = [before, index].every((i) => {
    const edge = edges[i];
    return edge !== undefined && apart(edge.start, edge.end) - reachAt(i) - reachAt(i + 1) > LEFT;
  });
  const clear = (other: Edge): boolean => edgeGap(relief, other) > LEFT;
  return (
    fits &&
    edges.every((edge, i) => i === index || i === before || clear(edge)) &&
    reliefs.every((other, i) => i === index || other === null || clear(other))
  );
}
