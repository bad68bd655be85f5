import type { SideName } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Plan } from '$lib/solution/document.ts';
import { angleText, lengthText } from '$lib/views/ui/formatNumber.ts';

/** One size of the stand that each layout needs. */
export interface StandRow {
  readonly label: string;
  /** Null where the layout has no plan. */
  readonly cells: readonly (string | null)[];
}

/** The stand that each layout needs: both sides at once where they are alike, else left and right. */
export function standRows(plans: readonly (Plan | null)[], display: LengthDisplay): StandRow[] {
  const row = (label: string, of: (plan: Plan, side: SideName) => string): StandRow => ({
    label,
    cells: plans.map((plan) => {
      if (plan === null) return null;
      const [left, right] = [of(plan, 'left'), of(plan, 'right')];
      return left === right ? right : `${left}, ${right}`;
    }),
  });
  return [
    row('Slope', ({ sides }, side) => angleText(sides[side].tilt)),
    row('Height in front', ({ stand }, side) => lengthText(stand[side].frontHeight, display)),
    row('Height behind', ({ stand }, side) => lengthText(stand[side].rearHeight, display)),
    row('Width', ({ stand }, side) => lengthText(stand[side].width, display)),
    row('Toe', ({ sides }, side) => angleText(sides[side].toe)),
  ];
}
