import { fromMillimetres, type LengthUnit } from './units.ts';

/** A tenth of a millimetre is finer than a desk is measured. */
const MM_DECIMALS = 1;
const INCH_DECIMALS = 3;
const ANGLE_DECIMALS = 2;

const trueMinus = (digits: string): string =>
  (Number(digits) === 0 ? digits.replace('-', '') : digits).replace('-', '−');

/** A rounded number without trailing zeros. */
const plain = (value: number, decimals: number): string => trueMinus(String(Number(value.toFixed(decimals))));

/**
 * A length as drawing text, without its unit: in millimetres one decimal at most and no trailing zeros, in inches three
 * decimals always. The minus is the typographic one; nothing rounds to a negative zero.
 */
export const lengthText = (mm: number, unit: LengthUnit): string =>
  unit === 'mm' ? plain(mm, MM_DECIMALS) : trueMinus(fromMillimetres(mm, unit).toFixed(INCH_DECIMALS));

/** An angle in degrees as drawing text: at most two decimals, with its sign. */
export const angleText = (degrees: number): string => `${plain(degrees, ANGLE_DECIMALS)}°`;

/** The unit as a word, for a screen reader. */
export const unitWord = (unit: LengthUnit): string => (unit === 'mm' ? 'millimetres' : 'inches');
