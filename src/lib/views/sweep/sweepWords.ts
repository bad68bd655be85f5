import type { NumberField } from '$lib/project/fields/field.ts';
import { fineLength, trimmed } from '$lib/project/lengthText.ts';
import type { LengthDisplay } from '$lib/project/units.ts';

/** Places along a sweep are told no finer than this. */
const DECIMALS = 2;

/** A value of a field with its unit: `1230 mm`, `12.5°`, `48.500″`. */
export function valueWords({ unit }: Pick<NumberField, 'unit'>, value: number, display: LengthDisplay): string {
  if (unit === 'mm') return fineLength(value, display);
  const number = trimmed(value, DECIMALS);
  return unit === '°' || unit === '' ? `${number}${unit}` : `${number}\u202f${unit}`;
}
