import { angleText, lengthText, unitWord } from '$lib/project/lengthText.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import type { AngleDimension, Dimension } from './view.ts';

const valueText = ({ kind, value }: Dimension | AngleDimension, unit: LengthUnit): string =>
  kind === 'angle' ? angleText(value) : lengthText(value, unit);

/** What stands on the dimension line. Results stand in brackets, as auxiliary dimensions do on a drawing (ISO 129-1). */
export function dimensionText(dimension: Dimension | AngleDimension, unit: LengthUnit): string {
  const text = valueText(dimension, unit);
  return dimension.input === undefined ? `(${text})` : text;
}

/** What a screen reader says: name, value and unit. */
export function spokenDimension(dimension: Dimension | AngleDimension, unit: LengthUnit): string {
  const text = valueText(dimension, unit);
  const said = dimension.kind === 'angle' ? text.replace('°', ' degrees') : `${text} ${unitWord(unit)}`;
  return `${dimension.name}: ${said}`;
}
