import type { NotchPlan } from '$lib/solution/soundDocument.ts';

type Cause = NonNullable<NotchPlan['cause']>;

const names: Readonly<Record<Cause, string>> = {
  desk: 'desk',
  wall: 'wall behind',
  'left-wall': 'left wall',
  'right-wall': 'right wall',
  ceiling: 'ceiling',
  monitor: 'screen',
  drivers: 'drivers apart',
  pair: 'loudspeakers apart',
};

/** What makes a notch, in a word or two; screens by their number, from 1. */
export const causeName = (cause: Cause | null, monitor: number | null): string =>
  cause === null ? 'several together' : monitor === null ? names[cause] : `screen ${monitor + 1}`;
