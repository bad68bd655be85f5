import { angleText, lengthText, unitWord } from '$lib/project/lengthText.ts';
import { unitOf, type Lengths } from '$lib/project/units.ts';
import { signOf } from './diameter.ts';
import type { AngleDimension, Dimension } from './view.ts';

function valueText(dimension: Dimension | AngleDimension, display: Lengths): string {
  if (dimension.kind === 'angle') return angleText(dimension.value);
  // Nothing is made to a fraction that had to be rounded.
  return lengthText(dimension.value, dimension.defining ? unitOf(display) : display);
}

/**
 * What stands on the dimension line. Results stand in brackets, as auxiliary dimensions do on a drawing (ISO 129-1), but for
 * those that something is made to.
 */
export function dimensionText(dimension: Dimension | AngleDimension, display: Lengths): string {
  // As short as can be: the sign stands close to its number.
  const text = valueText(dimension, display).replace(/^(≈?)\u202f?/, `$1${signOf(dimension)}`);
  return dimension.input === undefined && !('defining' in dimension && dimension.defining) ? `(${text})` : text;
}

/** What a screen reader says: name, value and unit. */
export function spokenDimension(dimension: Dimension | AngleDimension, display: Lengths): string {
  const text = valueText(dimension, display);
  const said = dimension.kind === 'angle' ? text.replace('°', ' degrees') : `${text} ${unitWord(unitOf(display))}`;
  return `${dimension.name}: ${said}`;
}
