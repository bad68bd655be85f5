import { circle, type Circle, type Path } from '$lib/geometry/contour.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { pointGap } from '$lib/geometry/edgeGap.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import type { Stretch } from './openings.ts';
import { middleLineOf } from './middleLine.ts';
import { built, noAnswer, type Outcome } from './outcome.ts';
import type { Layer } from './layer.ts';

/** Wood or plastic round a pocket where no rods say how much, mm: common practice, no source. */
const WALL = 2;

/** Least wood or plastic round a round hole, mm. */
export const wallOf = ({ rods }: Pick<StandSettings, 'rods'>): number => rods?.edge ?? WALL;
/** Places tried along the middle line: finer than a millimetre on any usual stand. */
const PLACES = 400;

/**
 * Where the pockets go: on the line midway between base and slope, from the thick end, each as soon as it has its wall to
 * the outside, to rods and to the other pockets. No answer when there is no room for all.
 *
 * @param kept Stretches along u without pockets.
 */
export function pocketCentres(
  { core, rods }: Layer,
  outside: Path,
  { pockets, rods: asked }: Pick<StandSettings, 'pockets' | 'rods'>,
  kept: readonly Stretch[],
): Outcome<readonly Circle[]> {
  if (!pockets) return built([]);
  const wall = wallOf({ rods: asked });
  const radius = pockets.diameter / 2;
  const edges = edgesOf(outside);
  const line = middleLineOf(core);
  const [thick, thin] = line.frontWood >= line.rearWood ? [line.front, line.rear] : [line.rear, line.front];
  const found: Point[] = [];
  for (let place = 0; place <= PLACES && found.length < pockets.count; place++) {
    const share = place / PLACES;
    const at: Point = [thick[0] + (thin[0] - thick[0]) * share, thick[1] + (thin[1] - thick[1]) * share];
    const clear =
      kept.every(({ from, to }) => at[0] + radius + wall <= from || at[0] - radius - wall >= to) &&
      found.every(([u, z]) => Math.hypot(at[0] - u, at[1] - z) >= 2 * radius + wall) &&
      rods.every(({ u, z, diameter }) => Math.hypot(at[0] - u, at[1] - z) >= radius + diameter / 2 + wall) &&
      edges.every((edge) => pointGap(at, edge) >= radius + wall);
    if (clear) found.push(at);
  }
  if (found.length < pockets.count) {
    return noAnswer(
      '/stand/pockets',
      needs(
        says`room for ${pockets.count} pockets of ${asTyped(pockets.diameter)} with walls of ${asTyped(wall)}`,
        says`room for ${found.length}`,
        'use fewer or smaller ones, or more lift',
      ),
    );
  }
  return built(found.map((centre) => circle(centre, radius)));
}
