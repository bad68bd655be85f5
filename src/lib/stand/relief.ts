import { clipConvex, insetConvex } from '$lib/geometry/clipConvex.ts';
import { polygonPath, type Path, type Vertex } from '$lib/geometry/contour.ts';
import { edgesOf, pointAt, type ArcEdge } from '$lib/geometry/edge.ts';
import { inner, minus, outer, rightOf, shifted, unit } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { Stretch } from './openings.ts';
import { SLACK } from './slack.ts';

/** A window less wide than this somewhere saves nothing worth the cut: common practice, no source. mm. */
const NARROWEST = 4;

/** Radians of an arc that a straight run of a window follows at most: it stays clear of it by a 200th of the radius. */
const CHORD = 0.2;

/**
 * Windows in the core of a slice: clockwise, corners rounded, with at least the web between a window and every edge,
 * rounded corner, slot, recess and kept stretch, and between two windows. Webs stand plumb at each kept stretch. None where
 * no room is.
 *
 * @param core Convex, counter-clockwise: base, rear, top, front.
 * @param outside What the slice is cut to, with its rounded corners.
 * @param taken What openings take away from each of the four edges.
 * @param kept Stretches that stay whole, such as the holes': in any order.
 */
export function reliefWindows(
  core: readonly Point[],
  outside: Path,
  { web, corner }: NonNullable<StandSettings['relief']>,
  taken: readonly number[],
  kept: readonly Stretch[],
): readonly Path[] {
  const room = insetConvex(
    core,
    taken.map((some) => some + web),
  );
  if (room.length === 0) return [];
  const arcs = edgesOf(outside)
    .filter((edge) => edge.kind === 'arc')
    .filter(({ sweep, radius }) => sweep > 0 && radius > web);
  const ends = room.map(([u]) => u);
  return gapsBetween(kept, web, Math.min(...ends), Math.max(...ends)).flatMap(({ from, to }) => {
    const window = clipConvex(clipConvex(room, [from, 1], [from, 0]), [to, 0], [to, 1]);
    const within = (inward: number) => clearOf(arcs, web, window, inward);
    if (window.length === 0 || within(NARROWEST / 2).length === 0) return [];
    const rounded = roundCorners(window, corner, () => true);
    // Where an edge is too short for the corners, as at a thin end, the tip is left out: a sliver saves nothing.
    const whole = arcs.length === 0 && rounded.radius >= corner - SLACK;
    return [reversed(whole ? rounded.path : opened(within, corner))];
  });
}

/** Where the middle of a disc may be whose rim stays in the window, and the web away from the outside's arcs. */
function clearOf(arcs: readonly ArcEdge[], web: number, window: readonly Point[], disc: number): readonly Point[] {
  const inset = insetConvex(
    window,
    window.map(() => disc),
  );
  return arcs.reduce((left, arc) => clipByArc(left, arc, arc.radius - web - disc), inset);
}

/** A convex polygon cut along chords of an arc with the centre and sweep of another: on its inside. */
function clipByArc(polygon: readonly Point[], arc: ArcEdge, radius: number): readonly Point[] {
  if (radius <= 0 || polygon.length === 0) return polygon;
  const count = Math.ceil(arc.sweep / CHORD);
  const at = (k: number): Point => shifted(arc.centre, minus(pointAt(arc, k / count), arc.centre), radius / arc.radius);
  let left = polygon;
  for (let k = 0; k < count && left.length > 0; k++) left = clipConvex(left, at(k), at(k + 1));
  return left;
}

/**
 * All that a disc of the radius reaches, halved as often as it takes to find room; `within` tells where its middle may be,
 * and that there is a place for one of half the narrowest window.
 */
function opened(within: (disc: number) => readonly Point[], asked: number): Path {
  let [radius, middles] = [asked, within(asked)];
  while (middles.length === 0) {
    radius = Math.max(radius / 2, NARROWEST / 2);
    middles = within(radius);
  }
  if (radius === 0) return polygonPath(middles);
  const vertices = middles.flatMap((at, i): Vertex[] => {
    const arriving = unit(minus(at, middles.at(i - 1) ?? at));
    const leaving = unit(minus(middles[(i + 1) % middles.length] ?? at, at));
    const turn = Math.atan2(outer(arriving, leaving), inner(arriving, leaving));
    const start = shifted(at, rightOf(arriving), radius);
    const end = shifted(at, rightOf(leaving), radius);
    return [
      { x: start[0], y: start[1], bulge: Math.tan(turn / 4) },
      { x: end[0], y: end[1], bulge: 0 },
    ];
  });
  return { kind: 'path', closed: true, vertices };
}

function gapsBetween(kept: readonly Stretch[], web: number, from: number, to: number): Stretch[] {
  const gaps: Stretch[] = [];
  let open = from;
  for (const stretch of [...kept].sort((a, b) => a.from - b.from)) {
    if (stretch.from - web > open) gaps.push({ from: open, to: Math.min(to, stretch.from - web) });
    open = Math.max(open, stretch.to + web);
  }
  if (open < to) gaps.push({ from: open, to });
  return gaps.filter((gap) => gap.to > gap.from);
}
