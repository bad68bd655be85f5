import { angleText, lengthText, trimmed, unitWord } from '$lib/project/lengthText.ts';
import { fromMillimetres, unitOf, type Lengths } from '$lib/project/units.ts';
import { signOf } from './diameter.ts';
import type { AngleDimension, Concern, Dimension } from './view.ts';

/** How finely worked-out lengths are shown: to a millimetre on a screen, to a tenth on paper; about as much in inches. */
export type Fineness = 'screen' | 'paper';

/** What a value is marked with that the checks have something to say of. */
export const levelSigns: Readonly<Record<Concern, string>> = { fault: '✕', caution: '▲' };

const ANGLE_DECIMALS = 1;
const INCH_DECIMALS = 2;

/**
 * The bare number. A value that somebody gave has all the digits that they gave it; one that is worked out, none that a tape
 * cannot carry.
 */
export function valueText(dimension: Dimension | AngleDimension, display: Lengths, fineness: Fineness): string {
  const { input, value } = dimension;
  if (dimension.kind === 'angle') return input === undefined ? `${trimmed(value, ANGLE_DECIMALS)}°` : angleText(value);
  if (dimension.defining) {
    // Nothing is made to a fraction that had to be rounded.
    return lengthText(value, unitOf(display));
  }
  const unit = unitOf(display);
  const fraction = typeof display === 'string' ? null : display.fraction;
  if (input !== undefined || fineness === 'paper' || (unit === 'in' && fraction !== null))
    return lengthText(value, display);
  return unit === 'mm' ? trimmed(value, 0) : fromMillimetres(value, unit).toFixed(INCH_DECIMALS).replace('-', '−');
}

/**
 * What stands on the dimension line. Results stand in brackets, as auxiliary dimensions do on a drawing (ISO 129-1), but for
 * those that something is made to.
 */
export function dimensionText(
  dimension: Dimension | AngleDimension,
  display: Lengths,
  fineness: Fineness = 'paper',
): string {
  // As short as can be: the sign stands close to its number.
  const text = valueText(dimension, display, fineness).replace(/^(≈?)\u202f?/, `$1${signOf(dimension)}`);
  const worked = dimension.input === undefined && !('defining' in dimension && dimension.defining);
  const said = worked ? `(${text})` : text;
  const whole = 'each' in dimension && dimension.each ? `${said}\u00a0each` : said;
  return dimension.concern ? `${levelSigns[dimension.concern]}\u00a0${whole}` : whole;
}

/** What a screen reader says: name, value and unit, and what the checks say of it. */
export function spokenDimension(
  dimension: Dimension | AngleDimension,
  display: Lengths,
  fineness: Fineness = 'screen',
): string {
  const text = valueText(dimension, display, fineness);
  const said = dimension.kind === 'angle' ? text.replace('°', ' degrees') : `${text} ${unitWord(unitOf(display))}`;
  return `${dimension.name}: ${said}${dimension.concern ? `; a ${dimension.concern} concerns it` : ''}`;
}
