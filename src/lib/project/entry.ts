import { quantityOf } from './entryUnits.ts';
import { inchFraction } from './inchFraction.ts';
import { limitsText, type Range } from './range.ts';
import { readEntry } from './readEntry.ts';
import { fromMillimetres, type Denominator, type LengthUnit } from './units.ts';

/**
 * Numbers as people type them. A text that reads as a value becomes that value in the file's unit; any other text stays a
 * text, so that the check of the project names it at its place and the field can show it again.
 */

/**
 * What the document holds for a typed text: the value in the file's unit by `readEntry`, null for an empty text where
 * empty has a meaning, else the text itself, which no check lets pass.
 */
export function entryValue(text: string, range: Range, unit: LengthUnit, mayBeEmpty: boolean): number | string | null {
  if (mayBeEmpty && text.trim() === '') return null;
  const reading = readEntry(text, quantityOf(range), unit);
  return reading.ok ? reading.value : text;
}

/** Decimals shown for a length that was not typed in the unit it is shown in: 0.0001 in is a fortieth of a hair. */
const INCH_DECIMALS = 4;

/** No field holds a number that needs more: the widest range is 20,000 and the finest step a thousandth. */
const MOST_DECIMALS = 12;

/**
 * The text a field shows for a value of the document: `entryValue` reads it back as the same value when shown in mm.
 * Inches are shown as fractions of the denominator where they are such a fraction exactly, else as decimals: what is typed
 * over is never further off than the last decimal.
 */
export function entryText(
  value: unknown,
  range: Range,
  unit: LengthUnit,
  denominator: Denominator | null = null,
): string {
  if (typeof value === 'string') return value;
  if (typeof value !== 'number') return '';
  if (range.unit !== 'mm' || unit === 'mm') return plainDecimal(value);
  const fraction = denominator && inchFraction(value, denominator);
  if (fraction?.exact) return fraction.text;
  return String(Number(fromMillimetres(value, unit).toFixed(INCH_DECIMALS)));
}

/** A number as digits without an exponent, where digits can say it. */
function plainDecimal(value: number): string {
  const shortest = String(value);
  if (!shortest.includes('e-')) return shortest;
  const written = value.toFixed(MOST_DECIMALS).replace(/\.?0+$/, '');
  return Number(written) === value ? written : shortest;
}

/** Shown limits end inside the real ones. */
const LIMIT_STEPS = 100;

/** The range in the unit it is typed in. */
export function rangeIn(range: Range, unit: LengthUnit): Range {
  if (range.unit !== 'mm' || unit === 'mm') return range;
  const inward = (value: number, round: (x: number) => number): number =>
    round(fromMillimetres(value, unit) * LIMIT_STEPS) / LIMIT_STEPS;
  return { ...range, unit, min: inward(range.min, Math.ceil), max: inward(range.max, Math.floor) };
}

/**
 * What to do about a value that misses its range, in the unit it is typed in: `Enter 200 to 2500 mm`; of a text with
 * figures in it, what keeps it from being a value, and where. Null when the value is a number in its range.
 */
export function rangeMessage(value: unknown, range: Range, unit: LengthUnit): string | null {
  const isNumber = typeof value === 'number';
  if (isNumber && value >= range.min && value <= range.max && !(range.whole && !Number.isInteger(value))) return null;
  const reading = typeof value === 'string' && /\d/.test(value) ? readEntry(value, quantityOf(range), unit) : null;
  if (reading?.ok === false && !reading.tooLarge) return reading.message;
  const asked = `Enter ${limitsText(rangeIn(range, unit))}`;
  return reading?.ok === false ? `${asked}, not ${String(value).trim()}` : asked;
}
