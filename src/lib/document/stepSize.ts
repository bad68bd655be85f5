import type { NumberField } from '$lib/project/fields/field.ts';
import type { Range } from '$lib/project/range.ts';
import type { LengthUnit } from '$lib/project/units.ts';

/** The keys that are held while an arrow is pressed. */
export interface Held {
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** Inches: the divisions of a tape measure, half an inch, and the finest that a rule shows. */
const INCH_STEPS = { plain: 1 / 16, shift: 1 / 2, alt: 1 / 64 } as const;

/**
 * What one press of an arrow key adds to a number, in the unit it is shown in: the field's own step; ten of it with Shift, a
 * tenth with Alt. Whole numbers have no tenths.
 */
export function stepSize({ unit: of, whole, step }: NumberField, unit: LengthUnit, { shiftKey, altKey }: Held): number {
  const inches = of === 'mm' && unit === 'in';
  if (shiftKey) return inches ? INCH_STEPS.shift : 10 * step;
  if (altKey && !whole) return inches ? INCH_STEPS.alt : step / 10;
  return inches ? INCH_STEPS.plain : step;
}

/** Steps add up without float dust: no step has more decimals. */
const DECIMALS = 6;

/** The text of a number moved by so much, held within its range. */
export const steppedText = (value: number, by: number, { min, max }: Pick<Range, 'min' | 'max'>): string =>
  String(Number(Math.min(max, Math.max(min, value + by)).toFixed(DECIMALS)) + 0);
