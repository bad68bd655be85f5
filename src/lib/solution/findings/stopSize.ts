import { toTape } from '$lib/project/tape.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';

type Stop = NonNullable<StandSettings['stop']>;

/** A stop as the tape shows it: no thicker than has room, and no lower than it was. */
export const stopToTape = ({ height, thickness }: Stop, display: LengthDisplay): Stop => ({
  height: toTape(height, display, 'up'),
  // Less than a step of the tape stays as it is: rounded down it would be nothing.
  thickness: toTape(thickness, display, 'down') || thickness,
});
