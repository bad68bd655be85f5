import { angleText, lengthText, unitWord } from '$lib/project/lengthText.ts';
import { unitOf, type Lengths } from '$lib/project/units.ts';
import type { AngleDimension, Dimension } from './view.ts';

const valueText = ({ kind, value }: Dimension | AngleDimension, display: Lengths): string =>
  kind === 'angle' ? angleText(value) : lengthText(value, display);

/** What stands on the dimension line. Results stand in brackets, as auxiliary dimensions do on a drawing (ISO 129-1). */
export function dimensionText(dimension: Dimension | AngleDimension, display: Lengths): string {
  // As short as can be: the sign stands close to its number.
  const text = valueText(dimension, display).replace('≈\u202f', '≈');
  return dimension.input === undefined ? `(${text})` : text;
}

/** What a screen reader says: name, value and unit. */
export function spokenDimension(dimension: Dimension | AngleDimension, display: Lengths): string {
  const text = valueText(dimension, display);
  const said = dimension.kind === 'angle' ? text.replace('°', ' degrees') : `${text} ${unitWord(unitOf(display))}`;
  return `${dimension.name}: ${said}`;
}
