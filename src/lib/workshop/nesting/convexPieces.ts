import { edgesOf, pointAt, type ArcEdge } from '$lib/geometry/edge.ts';
import { isInside } from '$lib/geometry/inside.ts';
import { meetings } from '$lib/geometry/edgeGap.ts';
import { middle, minus, outer, shifted } from '$lib/geometry/plane.ts';
import { polygonPath, type Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';

/** A convex polygon, counter-clockwise. */
export type Convex = readonly Point[];

/** mm. How far straight edges may stand off an arc that they surround: a tenth of a common kerf costs no copies. */
export const ARC_ERROR = 0.02;
/** mm². Twice the area of a corner this flat is dust, not a notch. */
const FLAT_CORNER = 1e-9;

/**
 * Convex polygons that together cover a closed counter-clockwise outline: exactly it when its edges are straight, at most
 * `ARC_ERROR` more where it has arcs. What cannot be taken apart is covered by its hull: too much, never too little.
 */
export const convexPieces = (outline: Path): Convex[] => takeApart(surround(outline));

/** The corners of a polygon round the outline: tangents outside its bulges, chords across its hollows. */
function surround(outline: Path): Point[] {
  return edgesOf(outline).flatMap((edge): Point[] => {
    if (edge.kind === 'straight') return [edge.start];
    return [edge.start, ...(edge.sweep > 0 ? tangentCorners(edge) : chordCorners(edge))];
  });
}

const stepsOf = ({ radius, sweep }: ArcEdge): number => {
  const half = Math.atan(Math.sqrt(2 * radius * ARC_ERROR + ARC_ERROR ** 2) / radius);
  return Math.ceil(Math.abs(sweep) / (2 * half));
};

function tangentCorners(arc: ArcEdge): Point[] {
  const steps = stepsOf(arc);
  const stretch = 1 / Math.cos(arc.sweep / steps / 2);
  return Array.from({ length: steps }, (_, i) => {
    const onArc = pointAt(arc, (i + 0.5) / steps);
    return shifted(arc.centre, minus(onArc, arc.centre), stretch);
  });
}

function chordCorners(arc: ArcEdge): Point[] {
  const steps = stepsOf(arc);
  return Array.from({ length: steps - 1 }, (_, i) => pointAt(arc, (i + 1) / steps));
}

/** Splits at a notch, along the diagonal that leaves the fewest notches, until none is left. */
function takeApart(corners: readonly Point[]): Convex[] {
  const notch = corners.findIndex((_, i) => isNotch(corners, i));
  if (notch < 0) return [corners];
  const outline = polygonPath(corners);
  const edges = corners.map((start, i) => ({
    kind: 'straight' as const,
    start,
    end: corners[(i + 1) % corners.length] ?? start,
  }));
  let best: { halves: [Point[], Point[]]; notches: number } | null = null;
  for (let other = 0; other < corners.length; other++) {
    const [from, to] = [corners[notch], corners[other]];
    const steps = (other - notch + corners.length) % corners.length;
    if (from === undefined || to === undefined || steps < 2 || steps > corners.length - 2) continue;
    const diagonal = { kind: 'straight' as const, start: from, end: to };
    const free = edges.every(
      (edge) =>
        [from, to].some((end) => end === edge.start || end === edge.end) || meetings(edge, diagonal).length === 0,
    );
    if (!free || !isInside(middle(from, to), outline)) continue;
    const halves: [Point[], Point[]] = [run(corners, notch, steps), run(corners, other, corners.length - steps)];
    const notches = notchCount(halves[0]) + notchCount(halves[1]);
    if (best === null || notches < best.notches) best = { halves, notches };
  }
  return best === null ? [hull(corners)] : best.halves.flatMap(takeApart);
}

const isNotch = (corners: readonly Point[], i: number): boolean => {
  const [before, here, after] = [corners.at(i - 1), corners[i], corners[(i + 1) % corners.length]];
  if (before === undefined || here === undefined || after === undefined) return false;
  return outer(minus(here, before), minus(after, here)) < -FLAT_CORNER;
};

const notchCount = (corners: readonly Point[]): number => corners.filter((_, i) => isNotch(corners, i)).length;

/** `count` + 1 corners in order, from number `first` on. */
const run = (corners: readonly Point[], first: number, count: number): Point[] =>
  [...corners, ...corners].slice(first, first + count + 1);

/** The convex hull, counter-clockwise (Andrew's monotone chain). */
function hull(points: readonly Point[]): Convex {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...chain(sorted), ...chain(sorted.reverse())];
}

function chain(sorted: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of sorted) {
    for (let last = kept.at(-1), before = kept.at(-2); last && before; last = kept.at(-1), before = kept.at(-2)) {
      if (outer(minus(last, before), minus(point, last)) > 0) break;
      kept.pop();
    }
    kept.push(point);
  }
  return kept.slice(0, -1);
}
