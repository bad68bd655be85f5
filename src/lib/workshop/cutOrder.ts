import { signedArea } from '$lib/geometry/area.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { isInside } from '$lib/geometry/inside.ts';
import type { Contour } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { CutPath } from './kerf.ts';
import { endOf, nearestFirst, startOf } from './nearestFirst.ts';

/** The contours of one sheet in the order in which to cut them: first `engrave`, then `inside`, then `outside`. */
export interface CutOrder {
  readonly engrave: readonly Contour[];
  /** Holes and slots; also everything of a part that lies in another part's hole, as it comes loose with that hole. */
  readonly inside: readonly Contour[];
  readonly outside: readonly Contour[];
  /** What the beam travels unlit, mm: from the sheet's origin to the first contour and from each to the next. */
  readonly travel: number;
}

/**
 * Contours up to this much larger than the smallest count as of one size. Mirrored parts differ by less; between parts
 * that differ by more, the small one wants the sheet still whole.
 */
const ALIKE = 1.5;

const ORIGIN: Point = [0, 0];

/**
 * The order of cutting, whatever order the parts come in: engraving before cuts; holes before outsides; a part that lies in
 * another's hole before that hole; small before large, sizes within a factor of 1.5 counting as alike; and among those
 * the nearest next. Where going to the nearest ends in more travel than the order given, under the same rules, that one
 * is kept: so the travel is never longer than it. Deterministic.
 */
export function cutOrder(cuts: readonly CutPath[]): CutOrder {
  const passes = passesOf(cuts);
  const sorted = ordered(passes, nearestFirst);
  const given = ordered(passes, (contours) => contours);
  return sorted.travel <= given.travel ? sorted : given;
}

interface Pass {
  readonly layer: 'engrave' | 'inside' | 'outside';
  readonly contours: readonly Contour[];
}

/** What may be cut in any order among itself, in the order of the passes. */
function passesOf(cuts: readonly CutPath[]): Pass[] {
  const depths = depthsOf(cuts);
  const deepest = Math.max(0, ...depths);
  const passes: Pass[] = [{ layer: 'engrave', contours: cuts.flatMap(({ engrave }) => engrave) }];
  for (let depth = deepest; depth >= 0; depth -= 1) {
    const here = cuts.filter((_, i) => depths[i] === depth);
    const outsides = bySize(here.map(({ outside }) => outside));
    passes.push(
      ...bySize(here.flatMap(({ inside }) => inside)).map((contours): Pass => ({ layer: 'inside', contours })),
    );
    passes.push(...outsides.map((contours): Pass => ({ layer: depth > 0 ? 'inside' : 'outside', contours })));
  }
  return passes;
}

/** In how many parts' holes each part lies. */
function depthsOf(cuts: readonly CutPath[]): number[] {
  const boxes = cuts.map(({ outside }) => extentOf(outside));
  const least = Math.min(...cuts.map(({ outside }) => sizeOf(outside)));
  const roomy = cuts.flatMap(({ inside }) => inside).filter((hole) => sizeOf(hole) > least);
  const depths = cuts.map(() => 0);
  for (const hole of roomy) {
    const room = extentOf(hole);
    boxes.forEach((box, i) => {
      const outside = cuts[i]?.outside;
      const fits = box.left > room.left && box.right < room.right && box.bottom > room.bottom && box.top < room.top;
      // Cut paths on a sheet never cross, so one point tells for the whole part.
      if (outside && fits && isInside(startOf(outside), hole)) depths[i] = (depths[i] ?? 0) + 1;
    });
  }
  return depths;
}

const sizeOf = (contour: Contour): number => Math.abs(signedArea(contour));

/** The contours in groups of one size, the smallest first, each in the order given. */
function bySize(contours: readonly Contour[]): Contour[][] {
  const sized = contours.map((contour, index) => ({ contour, index, size: sizeOf(contour) }));
  const rising = [...sized].sort((a, b) => a.size - b.size || a.index - b.index);
  const groups: (typeof sized)[] = [];
  let limit = -Infinity;
  for (const one of rising) {
    if (one.size > limit) {
      groups.push([]);
      limit = one.size * ALIKE;
    }
    groups.at(-1)?.push(one);
  }
  return groups.map((group) => group.sort((a, b) => a.index - b.index).map(({ contour }) => contour));
}

function ordered(
  passes: readonly Pass[],
  sort: (contours: readonly Contour[], from: Point) => readonly Contour[],
): CutOrder {
  const layers: Record<Pass['layer'], Contour[]> = { engrave: [], inside: [], outside: [] };
  let [at, travel] = [ORIGIN, 0];
  for (const { layer, contours } of passes) {
    for (const contour of sort(contours, at)) {
      const start = startOf(contour);
      travel += Math.hypot(start[0] - at[0], start[1] - at[1]);
      at = endOf(contour);
      layers[layer].push(contour);
    }
  }
  return { ...layers, travel };
}
