import type { Contour } from '$lib/geometry/contour.ts';
import { contourLength } from '$lib/geometry/contourLength.ts';
import type { Block, BuildTotals, Piece, Printed } from './body.ts';

/** The numbers to compare builds by, from what a stand is made of. */
export function buildTotalsOf(
  pieces: readonly Piece[],
  printed: readonly Printed[],
  blocks: readonly Block[],
  finishedMass: number,
): BuildTotals {
  const total = <One>(list: readonly One[], of: (one: One) => number): number =>
    list.reduce((sum, one) => sum + of(one), 0);
  // All layers of a stack have the same windows.
  const measured = new Map<Contour, number>();
  const lengthOf = (contour: Contour): number => {
    const length = measured.get(contour) ?? contourLength(contour);
    measured.set(contour, length);
    return length;
  };
  return {
    cutLength: total(
      pieces,
      ({ outside, inside, quantity }) => quantity * (contourLength(outside) + total(inside, lengthOf)),
    ),
    printedVolume: total(printed, ({ volume, quantity }) => quantity * volume),
    printedMass: total(printed, ({ mass, quantity }) => quantity * mass),
    solidWood: total(blocks, ({ blankVolume }) => blankVolume),
    finishedMass,
  };
}
