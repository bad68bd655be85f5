import { toTape } from '$lib/project/tape.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { tapeText } from './say.ts';

type Stop = NonNullable<StandSettings['stop']>;

/** A stop as the tape shows it: no thicker than has room, and no lower than it was. */
export const stopToTape = ({ height, thickness }: Stop, display: LengthDisplay): Stop => ({
  height: toTape(height, display, 'up'),
  // Less than a step of the tape stays as it is: rounded down it would be nothing.
  thickness: toTape(thickness, display, 'down') || thickness,
});

/** What adding it is called, in a finding and on its button alike. */
export const addStopText = ({ height, thickness }: Stop, display: LengthDisplay): string =>
  `Add a stop ${tapeText(height, display)} high and ${tapeText(thickness, display)} thick`;
