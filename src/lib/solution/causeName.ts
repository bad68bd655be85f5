import { surfaceName } from '$lib/solution/findings/surfaceText.ts';
import type { NotchPlan } from './soundDocument.ts';

type Cause = NonNullable<NotchPlan['cause']>;

const nameOf = (cause: Cause): string =>
  cause === 'drivers' ? 'drivers apart' : cause === 'pair' ? 'loudspeakers apart' : surfaceName(cause);

/** What makes a notch, in a word or two; screens by their number, from 1. */
export const causeName = (cause: Cause | null, monitor: number | null): string =>
  cause === null ? 'several together' : monitor === null ? nameOf(cause) : `screen ${monitor + 1}`;
