import { degrees } from '$lib/geometry/angle.ts';
import type { Layout, SideName } from '$lib/project/project.ts';
import { withEdits, type Edit } from '$lib/study/input.ts';
import type { ExistingStand, PlaceAsk } from './ask.ts';

/** The layout with a stand as it is under the loudspeakers, of one side: slope and height set, and the toe where its base fixes that; aimed at the seat alone. */
export function onStand(layout: Layout, { tilt, lift, toe }: ExistingStand): Layout {
  const turned = toe === null ? layout.aim.toe : ({ rule: 'as-set', degrees: degrees(toe) } as const);
  return {
    ...layout,
    aim: { ...layout.aim, over: null, toe: turned, tilt: { rule: 'as-set', degrees: degrees(tilt) } },
    stand: { ...layout.stand, lift },
  };
}

/** Left and right stands differ by no more than rounding, mm and radians. */
const SAME = 1e-9;

/** The layout with both stands and some edits, not checked; null where the two stands differ: a layout holds one slope and height. */
export function asPlaced(layout: Layout, { stands }: Pick<PlaceAsk, 'stands'>, edits: readonly Edit[]): Layout | null {
  const { left, right } = stands;
  const same = (one: number | null, other: number | null): boolean =>
    one === null || other === null ? one === other : Math.abs(one - other) <= SAME;
  return same(left.tilt, right.tilt) && same(left.lift, right.lift) && same(left.toe, right.toe)
    ? withEdits(onStand(layout, right), edits)
    : null;
}

/** The edit that puts a mark somewhere, seen as a right one. */
export const markEdits = (side: SideName, [x, y]: readonly [number, number]): Edit[] => [
  { pointer: `/placement/${side}/x`, value: side === 'left' ? 0 - x : x },
  { pointer: `/placement/${side}/y`, value: y },
];
