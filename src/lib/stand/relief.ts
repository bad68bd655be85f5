import { clipConvex, insetConvex } from '$lib/geometry/clipConvex.ts';
import type { Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { Stretch } from './openings.ts';

/** A window less wide than this somewhere saves nothing worth the cut: common practice, no source. mm. */
const NARROWEST = 4;

/**
 * Windows in the core of a slice: clockwise, corners rounded, with at least the web between a window and every edge, slot,
 * recess and kept stretch, and between two windows. Webs stand plumb at each kept stretch. None where no room is.
 *
 * @param core Convex, counter-clockwise: base, rear, top, front.
 * @param taken What openings take away from each of the four edges.
 * @param kept Stretches that stay whole, such as the holes': in any order.
 */
export function reliefWindows(
  core: readonly Point[],
  { web, corner }: NonNullable<StandSettings['relief']>,
  taken: readonly number[],
  kept: readonly Stretch[],
): readonly Path[] {
  const room = insetConvex(
    core,
    taken.map((some) => some + web),
  );
  if (room.length === 0) return [];
  const ends = room.map(([u]) => u);
  return gapsBetween(kept, web, Math.min(...ends), Math.max(...ends)).flatMap(({ from, to }) => {
    const window = clipConvex(clipConvex(room, [from, 1], [from, 0]), [to, 0], [to, 1]);
    const narrow =
      window.length === 0 ||
      insetConvex(
        window,
        window.map(() => NARROWEST / 2),
      ).length === 0;
    return narrow ? [] : [reversed(roundCorners(window, corner, () => true).path)];
  });
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
