import type { KeptFile } from '$lib/files/response/readKept.ts';
import type { HeardOne } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { MeasuredDip } from '$lib/proof/heard/dips.ts';
import type { Overlay } from '$lib/proof/heard/overlay.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { hertzText } from '$lib/views/sound/hertz.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { countText, formatNumber, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';

/** What was found in a file, in a sentence or two. */
export function foundText(found: KeptFile): string {
  const between = { semicolon: 'semicolons', space: 'tabs or spaces', comma: 'commas' }[found.separator];
  const also = [
    found.phased ? 'a phase, which is not kept' : '',
    found.columns > 3 ? `${found.columns} columns, of which the first three were read` : '',
    found.passedOver > 0 ? `${countText(found.passedOver, 'line', 'lines')} without numbers` : '',
    found.atZero > 0 ? `${countText(found.atZero, 'row', 'rows')} at 0 Hz, left out` : '',
    found.repeated > 0 ? `${countText(found.repeated, 'frequency', 'frequencies')} twice, of which the mean counts` : '',
    found.sorted ? '' : 'rows out of order, now sorted',
  ].filter((one) => one !== '');
  const numbers = found.decimalCommas ? 'decimal commas' : 'decimal points';
  const head = `${hertzText(found.lowest)} to ${hertzText(found.highest)}, ${countText(found.rows, 'frequency', 'frequencies')}; ${between} between columns, ${numbers}.`;
  return also.length === 0 ? head : `${head} Also found: ${also.join('; ')}.`;
} // prettier-ignore

const PLAYED = { left: 'left loudspeaker', right: 'right loudspeaker', both: 'both loudspeakers' } as const;

/** `left loudspeaker, at the head’s place, 60 mm up`. */
export function placeText({ of, at, moved }: HeardOne, display: LengthDisplay): string {
  const away = moveText(moved, display);
  return `${PLAYED[of]}, ${at === 'near' ? 'near the driver' : `at the head’s place${away === '' ? '' : `, ${away}`}`}`;
}

/** `60 mm up and 100 mm back`; empty for no move. */
export function moveText({ x, y, z }: Vec3, display: LengthDisplay): string {
  const parts: readonly (readonly [number, string, string])[] = [[z, 'up', 'down'], [y, 'towards the desk', 'back'], [x, 'to the right', 'to the left']]; // prettier-ignore
  return parts.flatMap(([by, more, less]) => (by === 0 ? [] : [`${tapeText(Math.abs(by), display)} ${by > 0 ? more : less}`])).join(' and '); // prettier-ignore
}

/** A window of means in words. */
export const windowText = (octaves: number): string => `1/${Math.round(1 / octaves)} octave`;

/** How all curves of an overlay came about. */
export const overlayText = ({ window, aligned }: Overlay): string =>
  `Both are mean powers over ${windowText(window)}, even in the logarithm of frequency, an octave being a factor of 2. The measured levels are moved by ${formatNumber(-aligned.by, 1)} dB, the mean difference of the means over 1/3 octave from ${hertzText(aligned.from)} to ${hertzText(aligned.to)}.`;

/** What makes a dip, in a few words. */
export const dipCause = ({ by }: MeasuredDip): string =>
  by === null
    ? 'unexplained'
    : by === 'loudspeaker'
      ? 'loudspeaker itself'
      : causeName(by.notch.cause, by.notch.monitor);

/** `890 Hz, 9.4 dB deep`. */
export const dipText = ({ frequency, depth }: Pick<MeasuredDip, 'frequency' | 'depth'>): string =>
  `${hertzText(frequency)}, ${quantityText(depth, 1, 'dB')} deep`;
