import { sideNames, type Layout, type Project, type Recorded } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { standFit, type StandFit } from './standsCut.ts';

/** The stands on record in one layout, and how they would do in the layout that is shown, as it is now. */
export interface StandsOnRecord {
  readonly layout: string;
  /** Whether that is the layout that is shown. */
  readonly own: boolean;
  /** When they were read last. */
  readonly date: string | null;
  /** Null where they cannot be put there at all. */
  readonly fit: StandFit | null;
}

/** Of every layout with stands on record, what those were made for held against what the plan needs now. */
export const standsOnRecord = (project: Project, plan: Plan): readonly StandsOnRecord[] =>
  project.layouts.flatMap((layout): StandsOnRecord[] => {
    const last = lastOf(layout);
    if (last === null) return [];
    const from = { project, layout, sides: { left: last.left.stand, right: last.right.stand } };
    const date = last.left.date ?? last.right.date;
    return [{ layout: layout.name, own: layout.name === plan.layout.name, date, fit: standFit(from, plan) }];
  });

/** The last entry of each side; of a side that was never read, the other side's. Null where there is no record. */
function lastOf({ built }: Layout): Readonly<Record<'left' | 'right', Recorded>> | null {
  const [left, right] = sideNames.map((side) => built?.record.findLast((entry) => entry.side === side));
  const one = left ?? right;
  return one ? { left: left ?? one, right: right ?? one } : null;
}
