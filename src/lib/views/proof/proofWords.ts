import { capital } from '$lib/project/capital.ts';
import { readingKinds } from '$lib/project/fields/readingKinds.ts';
import { built } from '$lib/project/fields/built.ts';
import type { Reading, Recorded, SideName } from '$lib/project/project.ts';
import { decimally, type LengthDisplay } from '$lib/project/units.ts';
import { angleText, formatNumber, lengthText, tapeText } from '$lib/views/ui/formatNumber.ts';

/** What is said of finished stands, in words. */

const CORNERS = {
  'front-inboard': 'front inner',
  'front-outboard': 'front outer',
  'rear-inboard': 'rear inner',
  'rear-outboard': 'rear outer',
} as const;

/** What a reading is of: `Stand, front height`; `Cabinet’s rear outer corner`. */
export function readingName(reading: Reading): string {
  switch (reading.what) {
    case 'corner':
      return `Cabinet’s ${CORNERS[reading.which]} corner`;
    case 'driver-height':
      return `${capital(reading.driver)}’s centre, height`;
    case 'spot':
      return reading.on === 'top' ? 'Spot of a light on top' : 'Spot of a light at the baffle';
    default:
      return readingKinds[reading.what].label;
  }
}

/** The same within a sentence. */
export const readingInSentence = (reading: Reading): string => {
  const name = readingName(reading);
  return `“${name.charAt(0).toLowerCase()}${name.slice(1)}”`;
};

/** From where to where it is read. */
export const readingHint = (reading: Reading): string => {
  if (reading.what !== 'spot') return readingKinds[reading.what].hint;
  const from =
    reading.on === 'top' ? 'lying on top along the cabinet’s depth' : 'held square to the baffle at the aimed point';
  return `of a light ${from}, ${readingKinds.spot.hint}`;
};

const ANGLES: readonly Reading['what'][] = ['slope', 'lean', 'toe'];

/** A number of a reading: a length, or an angle. */
export const readText = (what: Reading['what'], value: number, display: LengthDisplay): string =>
  ANGLES.includes(what) ? angleText(value) : lengthText(value, decimally(display));

/** Half of a span, without its unit where one stands beside it: `± 5 mm`. */
export const sureText = (mm: number, display: LengthDisplay): string => `± ${tapeText(mm, display)}`;

/** Less is no way to the one side or the other, mm. */
const LEAST_OFF = 0.5;

/** Where something is from a point, as one sees it from the chair: `12 mm right, 4 mm over`. */
export function offText(right: number, over: number, display: LengthDisplay): string {
  const part = (value: number, plus: string, minus: string): readonly string[] =>
    Math.abs(value) < LEAST_OFF ? [] : [`${tapeText(Math.abs(value), display)} ${value < 0 ? minus : plus}`];
  return [...part(right, 'right', 'left'), ...part(over, 'over', 'under')].join(', ') || 'the middle itself';
}

/** Something to do, as the record keeps it. */
type Done = Recorded['done'][number];

interface Told {
  readonly side: SideName;
  readonly display: LengthDisplay;
  /** How far the rear corner that is away from the middle goes in a turn, mm; left out where it is not known. */
  readonly corner?: number;
}

/** What to do, as a step: `Lay 1.6 mm of card under the cabinet’s rear edge.` */
export function doText(done: Done, { display, corner }: Told): string {
  const length = (mm: number): string => lengthText(mm, decimally(display));
  switch (done.act) {
    case 'leave':
      return 'Leave it as it is.';
    case 'shim':
      return `Lay ${length(done.by)} of card under the cabinet’s ${done.where} edge, all along it.`;
    case 'turn': {
      const outwards = done.by > 0;
      const way = outwards ? 'towards the middle' : 'away from the middle';
      const how =
        corner === undefined
          ? ''
          : `: hold its front on the mark and move the rear outer corner ${length(corner)} ${outwards ? 'outwards' : 'inwards'}`;
      return `Turn the stand ${angleText(Math.abs(done.by))} ${way}${how}.`;
    }
    case 'move': {
      const across = `${length(Math.abs(done.x))} to the ${done.x < 0 ? 'left' : 'right'}`;
      const away = `${length(Math.abs(done.y))} ${done.y < 0 ? 'towards you' : 'away from you'}`;
      return `Move the stand ${across} and ${away}, without turning it.`;
    }
  }
}

/** How a reading fits the rest, in words: `0.2 mm more than the rest say`. */
export function fitText(what: Reading['what'], off: number, display: LengthDisplay): string {
  const size = readText(what, Math.abs(off), display);
  return Number.parseFloat(formatNumber(Math.abs(off), 2)) === 0 ? 'as the rest say' : `${size} ${off > 0 ? 'more' : 'less'} than the rest say`; // prettier-ignore
}

/** Of a place the two numbers by their names; of anything else nothing. */
export const numberName = (key: string): string =>
  ({ x: 'sideways', y: 'from the edge', z: 'height', run: 'over a run of' })[key] ?? '';

/** Labels of what is said of the readings as a whole. */
export const { date: dateField, note: noteField } = built;
