import { lengthWithUnit } from './lengthText.ts';
import { unitOf, type LengthDisplay, type Lengths } from './units.ts';

/** One length or several that share their unit: `12.5 mm`, `200 to 2500 mm`, `8 by 6 mm`. */
const LENGTHS =
  /(?<![\w.,])[\u2212-]?\d+(?:\.\d+)?(?:(?: to | by | and | or | × )[\u2212-]?\d+(?:\.\d+)?)*[ \u202f]mm(?![\w²³/])/g;
const NUMBER = /[\u2212-]?\d+(?:\.\d+)?/g;

/**
 * A sentence about a plan with its lengths, which plans give in mm, in the unit that is shown. Everything else stays, the
 * names among it: a board called `MDF 3 mm` is called so in inches too.
 *
 * @param names what the project's own things are called.
 */
export function lengthsIn(text: string, lengths: Lengths, names: readonly string[]): string {
  if (unitOf(lengths) === 'mm') return text;
  const display = typeof lengths === 'string' ? { length: lengths, fraction: null } : lengths;
  const own = names.filter((name) => name !== '' && text.includes(name)).sort((a, b) => b.length - a.length);
  const [name] = own;
  if (name === undefined) return text.replace(LENGTHS, (found) => inUnit(found, display));
  return text
    .split(name)
    .map((part) => lengthsIn(part, display, own.slice(1)))
    .join(name);
}

/** Each number with its unit: fractions of an inch do not share one well. */
const inUnit = (found: string, display: LengthDisplay): string =>
  found
    .replace(/[ \u202f]mm$/, '')
    .replace(NUMBER, (number) => lengthWithUnit(Number(number.replace('\u2212', '-')), display));
