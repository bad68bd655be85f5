import { edgesOf, heading, type Edge } from './edge.ts';
import { edgeGap, meetings } from './edgeGap.ts';
import { edgeExtent, type Extent } from './extent.ts';
import { isInsideEdges } from './inside.ts';
import { momentsOf } from './moments.ts';
import { apart, inner, outer } from './plane.ts';
import type { Circle, Contour, Path } from './contour.ts';
import type { Point } from './point.ts';

/** What makes a figure impossible to cut as drawn. */
export interface FigureFlaw {
  readonly what:
    | 'not a closed line' // a number that is none, an open path, or less than two edges
    | 'the wrong way round' // an outside that runs clockwise, a hole that runs counter-clockwise
    | 'crosses itself' // or touches itself, or folds back on itself
    | 'runs off the part' // a hole, all of it or some
    | 'too near the outside' // a hole
    | 'too near another hole'
    | 'a wrong area'; // none, or another than its moments say
  /** Index of the hole; null for the outside. */
  readonly hole: number | null;
  /** Where it was found. */
  readonly at: Point;
  /** mm of wood that are there, and that there have to be; 0 where it is not a matter of lengths. */
  readonly found: number;
  readonly least: number;
}

/** Least wood, mm: round a hole that is a path, and round one that is a circle. */
export interface LeastWood {
  readonly path: number;
  readonly circle: number;
}

/** mm. Lines nearer than this touch: a thousandth of what files keep, a million times the dust of doubles. */
const TOUCH = 1e-6;
/** mm. Neighbours that meet only nearer to their corner than this meet in it: the dust of lines that touch smoothly. */
const CORNER = 1e-3;
/** Sine of the angle under which a line counts as turning back onto itself. */
const FOLDED = 1e-9;
/** Part of the area by which two sums of it may differ. */
const SAME_AREA = 1e-9;

/**
 * What is wrong with an outside and its holes; null when they can be cut as they are: every line closed, simple and the
 * right way round, every hole inside with its least wood to the outside and to the others (between two circles their own
 * diameter is enough), an area over 0 that agrees with the moments. Measured on the lines themselves, arcs in closed form,
 * and sharing no step with what draws them.
 */
export function figureFlaw(outside: Contour, holes: readonly (Path | Circle)[], least: LeastWood): FigureFlaw | null {
  const lines = [outside, ...holes].map((contour, index) => lineOf(contour, index));
  for (const line of lines) {
    const flaw = lineFlaw(line);
    if (flaw) return flaw;
  }
  const [rim, ...inner] = lines;
  if (!rim) return null;
  for (const [i, line] of inner.entries()) {
    const flaw = holeFlaw(line, rim, inner.slice(0, i), least);
    if (flaw) return flaw;
  }
  return areaFlaw(lines, momentsOf(outside, holes).area);
}

interface Line {
  readonly contour: Contour;
  /** Null for the outside. */
  readonly hole: number | null;
  readonly edges: readonly Edge[];
  readonly boxes: readonly Extent[];
  readonly box: Extent;
  /** Signed, from the corners and bulges themselves. */
  readonly area: number;
}

function lineOf(contour: Contour, index: number): Line {
  const edges = edgesOf(contour);
  const boxes = edges.map(edgeExtent);
  return {
    contour,
    hole: index === 0 ? null : index - 1,
    edges,
    boxes,
    box: boxes.reduce(joined, { left: Infinity, bottom: Infinity, right: -Infinity, top: -Infinity }),
    area: ownArea(contour),
  };
}

const joined = (a: Extent, b: Extent): Extent => ({
  left: Math.min(a.left, b.left),
  bottom: Math.min(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
  top: Math.max(a.top, b.top),
});

/** Trapezia under the chords, and under each arc the segment beyond its chord. */
function ownArea(contour: Contour): number {
  if (contour.kind === 'circle') return Math.PI * contour.radius ** 2;
  const { vertices } = contour;
  const ground = vertices[0]?.y ?? 0;
  return vertices.reduce((sum, from, i) => {
    const to = vertices[(i + 1) % vertices.length] ?? from;
    const trapezium = (from.x - to.x) * ((from.y + to.y) / 2 - ground);
    return sum + trapezium + segment(Math.hypot(to.x - from.x, to.y - from.y), from.bulge);
  }, 0);
}

/** Bulges smaller than this lose their digits in the closed form; the segment is a parabola's. */
const SHALLOW = 1e-3;

function segment(chord: number, bulge: number): number {
  if (Math.abs(bulge) < SHALLOW) return (bulge * chord * chord * (1 + (bulge * bulge) / 5)) / 3;
  const radius = (chord * (bulge + 1 / bulge)) / 4;
  const angle = 4 * Math.atan(bulge);
  return (Math.sign(bulge) * radius ** 2 * (Math.abs(angle) - Math.sin(Math.abs(angle)))) / 2;
}

function lineFlaw(line: Line): FigureFlaw | null {
  const { contour, edges, area, hole, box } = line;
  const flaw = (what: FigureFlaw['what'], at: Point): FigureFlaw => ({ what, hole, at, found: 0, least: 0 });
  const start: Point = edges[0]?.start ?? [0, 0];
  const finite = Number.isFinite(box.left + box.right + box.bottom + box.top) && Number.isFinite(area);
  if (!finite || edges.length < 2 || (contour.kind === 'path' && !contour.closed)) {
    return flaw('not a closed line', start);
  }
  const meet = contour.kind === 'path' ? selfMeeting(line) : null;
  if (meet) return flaw('crosses itself', meet);
  const turned = contour.kind === 'path' && hole !== null ? -area : area;
  return turned > 0 ? null : flaw('the wrong way round', start);
}

/** Where a line meets itself other than in the corners between its edges; null for a simple one. */
function selfMeeting({ edges, boxes }: Line): Point | null {
  const count = edges.length;
  for (let i = 0; i < count; i++) {
    const edge = edges[i];
    if (!edge) continue;
    for (let j = i + 1; j < count; j++) {
      const other = edges[j];
      if (!other || far(boxes[i], boxes[j], TOUCH)) continue;
      const after = isNext(edges, i, j);
      const before = isNext(edges, j, i);
      if (after || before) {
        const at = after ? foldAt(edge, other) : null;
        const back = before ? foldAt(other, edge) : null;
        if (at ?? back) return at ?? back;
        const corners = [...(after ? [other.start] : []), ...(before ? [edge.start] : [])];
        const again = meetings(edge, other).find((point) => corners.every((corner) => apart(corner, point) > CORNER));
        if (again) return again;
      } else if (edgeGap(edge, other) <= TOUCH) return meetings(edge, other)[0] ?? other.start;
    }
  }
  return null;
}

/** Whether edge j follows on edge i, with no more than dust between them. */
function isNext(edges: readonly Edge[], i: number, j: number): boolean {
  const from = edges[i];
  const count = edges.length;
  if (!from) return false;
  for (let k = (i + 1) % count; k !== i; k = (k + 1) % count) {
    const here = edges[k];
    if (!here || apart(from.end, here.start) > TOUCH) return false;
    if (k === j) return true;
  }
  return false;
}

function foldAt(first: Edge, second: Edge): Point | null {
  const [arriving, leaving] = [heading(first, 'end'), heading(second, 'start')];
  return inner(arriving, leaving) < 0 && Math.abs(outer(arriving, leaving)) < FOLDED ? second.start : null;
}

const far = (a: Extent | undefined, b: Extent | undefined, gap: number): boolean =>
  !a || !b || a.left - b.right > gap || b.left - a.right > gap || a.bottom - b.top > gap || b.bottom - a.top > gap;

function holeFlaw(line: Line, rim: Line, others: readonly Line[], least: LeastWood): FigureFlaw | null {
  const own = least[line.contour.kind];
  const start = line.edges[0]?.start ?? [0, 0];
  const flaw = (what: FigureFlaw['what'], at: Point, found: number, wanted: number): FigureFlaw => ({
    what,
    hole: line.hole,
    at,
    found,
    least: wanted,
  });
  const near = nearest(line, rim, own);
  if (near.gap <= TOUCH || !isInsideEdges(start, rim.edges)) return flaw('runs off the part', near.at, 0, own);
  if (near.gap < own - TOUCH) return flaw('too near the outside', near.at, near.gap, own);
  for (const other of others) {
    const wanted = leastBetween(line.contour, other.contour, least);
    const between = nearest(line, other, wanted);
    const within = isInsideEdges(start, other.edges) || isInsideEdges(other.edges[0]?.start ?? start, line.edges);
    if (within || between.gap < wanted - TOUCH) {
      return flaw('too near another hole', between.at, within ? 0 : between.gap, wanted);
    }
  }
  return null;
}

function leastBetween(a: Contour, b: Contour, least: LeastWood): number {
  if (a.kind === 'circle' && b.kind === 'circle') return Math.min(least.circle, 2 * a.radius, 2 * b.radius);
  return least.path;
}

/** The least distance of two lines where it is under a length; else anything over it. */
function nearest(a: Line, b: Line, under: number): { readonly gap: number; readonly at: Point } {
  let [gap, at]: [number, Point] = [Infinity, a.edges[0]?.start ?? [0, 0]];
  if (far(a.box, b.box, under)) return { gap, at };
  for (const [i, edge] of a.edges.entries()) {
    if (far(a.boxes[i], b.box, under)) continue;
    for (const [j, other] of b.edges.entries()) {
      if (far(a.boxes[i], b.boxes[j], under)) continue;
      const here = edgeGap(edge, other);
      if (here < gap) [gap, at] = [here, edge.start];
    }
  }
  return { gap, at };
}

function areaFlaw(lines: readonly Line[], moments: number): FigureFlaw | null {
  const [whole = 0, ...holes] = lines.map(({ area }) => Math.abs(area));
  const wood = whole - holes.reduce((sum, hole) => sum + hole, 0);
  // Written so that NaN fails as well.
  if (wood > 0 && Math.abs(wood - moments) <= SAME_AREA * whole) return null;
  const at = lines[0]?.edges[0]?.start ?? [0, 0];
  return { what: 'a wrong area', hole: null, at, found: 0, least: 0 };
}
