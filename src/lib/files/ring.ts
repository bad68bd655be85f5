import { edgesOf, pointAt, type Edge } from '$lib/geometry/edge.ts';
import type { Contour, Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Whole micrometres in a millimetre: on this grid, tests for side and touch are exact in doubles up to 30 m. */
export const STEPS = 1000;

/** How far the chords of an arc may lie from it, mm: below what a printer or a mill shows. */
export const CHORD_ERROR = 0.02;

/** An arc of any size keeps so many chords to a full turn. */
const FEWEST = 4;

/** A closed polygon in whole micrometres, counter-clockwise, without repeated or straight-through corners. */
export interface Ring {
  readonly points: readonly Point[];
  /** How far each point rises in y from the bottom of its body to the top, whole micrometres; null where none does. */
  readonly lifts: readonly number[] | null;
  /** Equal for equal rings. */
  readonly key: string;
}

/**
 * A closed contour as a ring; arcs become chords that lie within them by at most `CHORD_ERROR`, so an outline of convex
 * arcs comes out that much small, and a round hole too.
 *
 * @throws RangeError naming the owner when a number is not finite, the contour is open or nothing is left of it.
 */
export function ringOf(contour: Contour, owner: string, roof?: Path): Ring {
  if (contour.kind === 'path' && !contour.closed)
    throw new RangeError(`${owner}: expected a closed contour, got an open one`);
  const lifts = new Map<Point, number>();
  const corners = withoutStraights(
    roof === undefined
      ? edgesOf(contour)
          .flatMap(chords)
          .map((point) => onGrid(point, owner))
      : leaning(contour, roof, owner, lifts),
  );
  const twice = corners.reduce((sum, point, i) => sum + crossing(corners.at(i - 1) ?? point, point), 0);
  if (twice === 0) throw new RangeError(`${owner}: expected a contour with an area, got one without`);
  const points = fromLeast(twice > 0 ? corners : corners.reverse());
  if (lifts.size === 0) return { points, lifts: null, key: points.join(' ') };
  const raised = points.map((point) => lifts.get(point) ?? 0);
  return { points, lifts: raised, key: `${points.join(' ')} up ${raised.join(' ')}` };
}

/** The points of an outline's chords; how far each of them rises goes into `lifts`. */
function leaning(contour: Contour, roof: Path, owner: string, lifts: Map<Point, number>): Point[] {
  if (contour.kind !== 'path' || contour.vertices.length !== roof.vertices.length) {
    throw new RangeError(`${owner}: expected an outline with as many vertices at the top as at the bottom, got others`);
  }
  const { vertices } = contour;
  return vertices.flatMap((from, i) => {
    const [to, above] = [vertices[(i + 1) % vertices.length] ?? from, roof.vertices[i] ?? from];
    const lift = Math.round((above.y - from.y) * STEPS);
    if (!Number.isFinite(lift)) throw new RangeError(`${owner}: expected finite lengths, got ${above.y}`);
    const own = edgesOf({ kind: 'path', closed: false, vertices: [from, to] })
      .flatMap(chords)
      .map((point) => onGrid(point, owner));
    for (const point of own) lifts.set(point, lift);
    return own;
  });
}

/** The ring at a height of its body, as a share of the whole. */
export const raisedTo = (ring: Ring, share: number): Ring =>
  ring.lifts === null
    ? ring
    : { ...ring, points: ring.points.map(([x, y], i): Point => [x, y + (ring.lifts?.[i] ?? 0) * share]) };

/** The points that the edge's chords start from. */
function chords(edge: Edge): Point[] {
  if (edge.kind === 'straight') return [edge.start];
  const sweep = Math.abs(edge.sweep);
  const finest = edge.radius > CHORD_ERROR ? 2 * Math.acos(1 - CHORD_ERROR / edge.radius) : Infinity;
  const count = Math.ceil(Math.max(sweep / finest, (sweep * FEWEST) / (2 * Math.PI)));
  return Array.from({ length: count }, (_, i) => (i === 0 ? edge.start : pointAt(edge, i / count)));
}

function onGrid([x, y]: Point, owner: string): Point {
  if (!Number.isFinite(x) || !Number.isFinite(y))
    throw new RangeError(`${owner}: expected finite lengths, got ${x}, ${y}`);
  return [Math.round(x * STEPS), Math.round(y * STEPS)];
}

/** Corners that repeat or that no direction changes at are of no use, and triangulation would leave some of them out. */
function withoutStraights(points: readonly Point[]): Point[] {
  const kept = [...points];
  for (let i = 0, calm = 0; kept.length > 2 && calm < kept.length;) {
    const at = i % kept.length;
    const [before, here, after] = [kept.at(at - 1), kept[at], kept[(at + 1) % kept.length]];
    if (before && here && after && sideOf(before, here, after) === 0) {
      kept.splice(at, 1);
      // Its neighbours may have become straight.
      [i, calm] = [at + kept.length - 2, 0];
    } else {
      [i, calm] = [at + 1, calm + 1];
    }
  }
  return kept;
}

const crossing = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];

/** Twice the area of the triangle, positive when c lies left of the way from a to b; exact on the grid. */
export const sideOf = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** The same ring from its leftmost, lowest corner: so that equal rings read alike. */
function fromLeast(points: readonly Point[]): Point[] {
  let least = 0;
  points.forEach((point, i) => {
    const best = points[least] ?? point;
    if (point[0] < best[0] || (point[0] === best[0] && point[1] < best[1])) least = i;
  });
  return [...points.slice(least), ...points.slice(0, least)];
}

/** Whether a point lies within the ring; a point on it may come out either way. */
export function isWithin([x, y]: Point, { points }: Ring): boolean {
  let inside = false;
  points.forEach((to, i) => {
    const from = points.at(i - 1) ?? to;
    if (from[1] > y === to[1] > y) return;
    const side = sideOf(from, to, [x, y]);
    if (to[1] > from[1] ? side > 0 : side < 0) inside = !inside;
  });
  return inside;
}

/** Whether two rings touch or cross anywhere. */
export function touches(a: Ring, b: Ring): boolean {
  if (apart(a, b)) return false;
  return a.points.some((end, i) => {
    const start = a.points.at(i - 1) ?? end;
    return b.points.some((far, j) => meet(start, end, b.points.at(j - 1) ?? far, far));
  });
}

function apart(a: Ring, b: Ring): boolean {
  return [0, 1].some((axis) => {
    const [one, other] = [a, b].map(({ points }) => points.map((point) => point[axis] ?? 0));
    return one && other ? Math.max(...one) < Math.min(...other) || Math.max(...other) < Math.min(...one) : false;
  });
}

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0])) return false;
  if (Math.max(a[1], b[1]) < Math.min(c[1], d[1]) || Math.max(c[1], d[1]) < Math.min(a[1], b[1])) return false;
  const [abc, abd, cda, cdb] = [sideOf(a, b, c), sideOf(a, b, d), sideOf(c, d, a), sideOf(c, d, b)];
  return Math.sign(abc) * Math.sign(abd) <= 0 && Math.sign(cda) * Math.sign(cdb) <= 0;
}
