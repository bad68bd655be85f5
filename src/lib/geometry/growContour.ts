import { angleAlong, edgesOf, heading, type ArcEdge, type Edge } from './edge.ts';
import { edgeExtent, type Extent } from './extent.ts';
import { edgeGap } from './edgeGap.ts';
import { growCorner } from './growCorner.ts';
import { inner, minus, rightOf, shifted, unit } from './plane.ts';
import { signedArea } from './area.ts';
import type { Contour, Path, Vertex } from './contour.ts';
import type { Point } from './point.ts';

/** mm. How far a grown contour may come too near its origin: far above the dust of doubles, far below any tool. */
const DUST = 1e-7;
/** Radians. Dust allowed on the sweep of an arc whose ends were worked out anew. */
const SWEEP_DUST = 1e-9;

/**
 * The contour at `distance` mm from a closed contour: outside it when positive, within it when negative, whichever way it
 * runs. Straight edges move parallel and meet in mitred corners (see `growCorner` for very sharp ones), arcs keep their
 * centre and change their radius. The result runs the same way and nowhere comes nearer than the distance.
 *
 * Null when there is no such contour: an edge or arc would vanish or turn round, or the result would cross itself, as in
 * a hole or a notch narrower than twice the distance. Null for open paths, which have no outside.
 */
export function growContour<Kind extends Contour>(contour: Kind, distance: number): Kind | null;
export function growContour(contour: Contour, distance: number): Contour | null {
  if (distance === 0) return contour;
  if (contour.kind === 'circle') {
    const radius = contour.radius + distance;
    return radius > DUST ? { ...contour, radius } : null;
  }
  return contour.closed ? growPath(contour, distance) : null;
}

function growPath(path: Path, distance: number): Path | null {
  const edges = edgesOf(path);
  const right = signedArea(path) > 0 ? distance : -distance;
  const moved = allOrNull(edges.map((edge) => moveRight(edge, right)));
  if (moved === null) return null;
  const corners = allOrNull(edges.map((edge, i) => growCorner(edges.at(i - 1) ?? edge, edge, right)));
  if (corners === null) return null;
  const vertices = allOrNull(
    moved.map((edge, i) => verticesOf(edge, corners[i] ?? [], corners[(i + 1) % corners.length] ?? [])),
  );
  if (vertices === null) return null;
  const grown: Path = { kind: 'path', closed: true, vertices: vertices.flat() };
  return keepsAway(grown, edges, Math.abs(distance)) ? grown : null;
}

function allOrNull<Value>(values: readonly (Value | null)[]): Value[] | null {
  const found = values.filter((value) => value !== null);
  return found.length === values.length ? found : null;
}

/** The edge moved to the right of its direction of travel; null when an arc has no radius left. */
function moveRight(edge: Edge, distance: number): Edge | null {
  const start = shifted(edge.start, rightOf(heading(edge, 'start')), distance);
  const end = shifted(edge.end, rightOf(heading(edge, 'end')), distance);
  if (edge.kind === 'straight') return { ...edge, start, end };
  const radius = edge.radius + Math.sign(edge.sweep) * distance;
  return radius > DUST ? { ...edge, start, end, radius } : null;
}

/** The vertices of the corner before an edge, the last of them carrying the edge's bulge; null when the edge is lost. */
function verticesOf(edge: Edge, before: readonly Point[], after: readonly Point[]): Vertex[] | null {
  const start = before.at(-1) ?? edge.start;
  const end = after[0] ?? edge.end;
  const bulge = edge.kind === 'arc' ? bulgeBetween(edge, start, end) : straightKept(edge, start, end);
  if (bulge === null) return null;
  return before.map(([x, y], i) => ({ x, y, bulge: i === before.length - 1 ? bulge : 0 }));
}

const straightKept = (edge: Edge, start: Point, end: Point): 0 | null =>
  inner(unit(minus(edge.end, edge.start)), minus(end, start)) > 0 ? 0 : null;

/** An arc can only lose at its ends: a longer one has been passed over by its neighbours. */
function bulgeBetween(arc: ArcEdge, start: Point, end: Point): number | null {
  const sweep = angleAlong({ ...arc, start }, end);
  return sweep > 0 && sweep <= Math.abs(arc.sweep) + SWEEP_DUST ? Math.sign(arc.sweep) * Math.tan(sweep / 4) : null;
}

/** A contour that crosses itself comes, beyond the crossing, too near the edge it crossed: so this check finds both. */
function keepsAway(grown: Path, edges: readonly Edge[], distance: number): boolean {
  const boxes = edges.map(edgeExtent);
  return edgesOf(grown).every((edge) => {
    const box = edgeExtent(edge);
    return edges.every((other, i) => {
      const otherBox = boxes[i] ?? box;
      return boxesApart(box, otherBox) >= distance || edgeGap(edge, other) >= distance - DUST;
    });
  });
}

const boxesApart = (a: Extent, b: Extent): number =>
  Math.max(a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top);
