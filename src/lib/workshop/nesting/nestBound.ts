import { capacityOf } from './arrange.ts';
import type { Item } from './nestBoard.ts';
import type { Problem } from './nestProblem.ts';
import type { Room } from './rows.ts';
import { FIT } from './rows.ts';

/**
 * How many whole sheets of a stock any arrangement takes at the least. Each copy, grown by half the spacing, keeps its own
 * wood within the usable part of a board grown alike; what the offcuts could hold at the most is taken off first, and an
 * offcut into which no part fits holds nothing. No layout may reach it: it says what cannot be beaten, not what can be had.
 */
export function leastSheets({ items, room, offcuts, pairs: { spacing } }: Problem): number {
  const claimed = items.reduce((sum, { claim, part }) => sum + claim * part.quantity, 0);
  const spare = offcuts.reduce((sum, offcut) => sum + offcutHolds(items, offcut, spacing), 0);
  return Math.max(0, Math.ceil((claimed - spare) / capacityOf(room, spacing) - FIT));
}

/** By area, and no more than all copies of the parts that fit into it. */
function offcutHolds(items: readonly Item[], offcut: Room, spacing: number): number {
  const fitting = items
    .filter((item) => fits(item, offcut))
    .reduce((sum, { claim, part }) => sum + claim * part.quantity, 0);
  return Math.min(fitting, capacityOf(offcut, spacing));
}

/** Whether a part fits a room at any turn allowed to it. */
export const fits = ({ shapes }: Pick<Item, 'shapes'>, { width, height }: Room): boolean =>
  shapes.some((shape) => shape.width <= width + FIT && shape.height <= height + FIT);
