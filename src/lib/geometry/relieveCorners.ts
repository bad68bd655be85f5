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
 * Between two square corners too near to each other for that, as at the end of a slot, both become T-bones: half circles in
 * the walls, each from the corner up, that leave the end whole. They reach r into the walls and 2r along them, and an end of
 * 2r lets the bit in.
 *
 * A corner stays sharp where one of its edges is an arc or has no room, or the relief would meet another part of the path.
 *
 * @param radius Of the arcs, mm, over 0: more than the bit's.
 */
export function relieveCorners(path: Path, radius: number): Path {
  const edges = edgesOf(path);
  const wished = edges.map((edge, i) => reliefBetween(edges.at(i - 1) ?? edge, edge, radius));
  const round = wished.map((relief, i) => (relief && hasRoom(relief, i, edges, wished) ? relief : null));
  const turnsIn = wished.map((relief) => relief !== null);
  const either = round.map((relief, i) => relief ?? sideRelief(edges, i, turnsIn, radius));
  const reliefs = either.map((relief, i) =>
    relief && (round[i] || hasRoom(relief, i, edges, either)) ? relief : null,
  );
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

/**
 * A T-bone at the start of an edge: a half circle in the wall at the end of a slot. Null where the corner is none of the
 * two at such an end, leans over it, or the end is less than the half circle's mouth.
 *
 * @param turnsIn Whether a corner between straight edges, at the start of the edge of the same index, turns right.
 */
function sideRelief(
  edges: readonly Edge[],
  index: number,
  turnsIn: readonly boolean[],
  radius: number,
): ArcEdge | null {
  const [before, after] = [edges.at(index - 1), edges[index]];
  if (!before || !after || turnsIn[index] !== true) return null;
  const [arriving, leaving] = [heading(before, 'end'), heading(after, 'start')];
  const right = -Math.atan2(outer(arriving, leaving), inner(arriving, leaving));
  const [endsHere, endBegins] = [turnsIn.at(index - 1) === true, turnsIn[(index + 1) % edges.length] === true];
  const end = endBegins ? after : before;
  if (right > Math.PI / 2 + RUNS_ON || endsHere === endBegins || apart(end.start, end.end) < 2 * radius) return null;
  const corner = after.start;
  const [start, stop] = endBegins
    ? [shifted(corner, arriving, -2 * radius), corner]
    : [corner, shifted(corner, leaving, 2 * radius)];
  return { kind: 'arc', start, end: stop, centre: shifted(start, endBegins ? arriving : leaving, radius), radius, sweep: -Math.PI }; // prettier-ignore
}

/** Whether a relief, at the start of the edge of the same index, leaves all other edges and reliefs alone. */
function hasRoom(
  relief: ArcEdge,
  index: number,
  edges: readonly Edge[],
  reliefs: readonly (ArcEdge | null)[],
): boolean {
  const before = (index + edges.length - 1) % edges.length;
  /** How much of an edge the relief at one of its ends takes. */
  const reach = (edge: Edge, at: 'start' | 'end', i: number): number => {
    const taken = reliefs[i % edges.length];
    return taken ? apart(at === 'start' ? taken.end : taken.start, edge[at]) : 0;
  };
  const fits = [before, index].every((i) => {
    const edge = edges[i];
    return edge && apart(edge.start, edge.end) - reach(edge, 'start', i) - reach(edge, 'end', i + 1) > LEFT;
  });
  const clear = (other: Edge): boolean => edgeGap(relief, other) > LEFT;
  return (
    fits &&
    edges.every((edge, i) => i === index || i === before || clear(edge)) &&
    reliefs.every((other, i) => i === index || other === null || clear(other))
  );
}
