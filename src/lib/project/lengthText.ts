import { inchFraction } from './inchFraction.ts';
import { fromMillimetres, type LengthDisplay, type LengthUnit } from './units.ts';

/** A tenth of a millimetre is finer than a desk is measured. */
const MM_DECIMALS = 1;
const INCH_DECIMALS = 3;
const ANGLE_DECIMALS = 2;

const NARROW = '\u202f';
const NO_BREAK = '\u00a0';

const trueMinus = (digits: string): string =>
  (Number(digits) === 0 ? digits.replace('-', '') : digits).replace('-', '−');

/** A number with so many decimals at most, no trailing zeros, the typographic minus, and no negative zero. */
export const trimmed = (value: number, decimals: number): string => trueMinus(String(Number(value.toFixed(decimals))));

/** The fraction; `≈` before it where the length is not that fraction exactly. */
function fractionText(mm: number, denominator: NonNullable<LengthDisplay['fraction']>): string {
  const { text, exact } = inchFraction(mm, denominator);
  return `${exact ? '' : `≈${NARROW}`}${text.replace('-', '−').replace(' ', NO_BREAK)}`;
}

/**
 * A length as drawing text, without its unit: in millimetres one decimal at most and no trailing zeros, in inches three
 * decimals always, or a fraction of the display's denominator with `≈` before it where it had to be rounded. The minus is
 * the typographic one; nothing rounds to a negative zero.
 */
export function lengthText(mm: number, display: LengthUnit | LengthDisplay): string {
  const { length, fraction } = typeof display === 'string' ? { length: display, fraction: null } : display;
  if (length === 'mm') return trimmed(mm, MM_DECIMALS);
  return fraction === null ? trueMinus(fromMillimetres(mm, length).toFixed(INCH_DECIMALS)) : fractionText(mm, fraction);
}

/** A length with its unit, to stand in a text: `476.3 mm`, `18.750″`, `18 3/4″`, `≈ 18 3/4″`. */
export const lengthWithUnit = (mm: number, display: LengthDisplay): string =>
  `${lengthText(mm, display)}${display.length === 'mm' ? `${NARROW}mm` : '″'}`;

/** A caliper reads a hundredth of a millimetre; a fraction of an inch is too coarse for what it measures. */
const FINE_DECIMALS = 2;

/** A thickness, a gap or a step, without its unit: `3.05`, `0.120`; a display of fractions has decimals here. */
export const fineText = (mm: number, { length }: LengthDisplay): string =>
  length === 'mm' ? trimmed(mm, FINE_DECIMALS) : lengthText(mm, length);

/** The same with its unit: `3.05 mm`, `0.120″`. */
export const fineLength = (mm: number, display: LengthDisplay): string =>
  `${fineText(mm, display)}${display.length === 'mm' ? `${NARROW}mm` : '″'}`;

/** An angle in degrees as drawing text: at most two decimals, with its sign. */
export const angleText = (degrees: number): string => `${trimmed(degrees, ANGLE_DECIMALS)}°`;

/** The unit as a word, for a screen reader. */
export const unitWord = (unit: LengthUnit): string => (unit === 'mm' ? 'millimetres' : 'inches');
