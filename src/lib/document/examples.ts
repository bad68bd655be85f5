import { entryText } from '$lib/project/entry.ts';
import { demoProject } from '$lib/project/demo.ts';
import { MM_PER_INCH, type LengthUnit } from '$lib/project/units.ts';
import type { Field } from '$lib/project/fields/field.ts';
import { valueAt } from './pointer.ts';

/**
 * What a field holds in the project that opens first, as one would type it: `1180`; where that says nothing, what it starts
 * as. Undefined where it starts as nothing.
 */
export function exampleAt(pointer: string, field: Field, unit: LengthUnit): string | undefined {
  const said = valueAt(demoProject, pointer.replace(/\/\d+(?=\/|$)/g, '/0'));
  const value = said ?? (field.kind === 'number' ? (field.start ?? field.default) : undefined);
  if (field.kind === 'number' && typeof value === 'number') {
    const typical = field.unit === 'mm' && unit === 'in' ? toSixteenth(value) : value;
    return entryText(typical, field, unit);
  }
  return field.kind === 'text' && typeof value === 'string' ? value : undefined;
}

/** A typical length in inches is a round one; what rounds to nothing stays as it is. */
const toSixteenth = (mm: number): number => (Math.round((mm / MM_PER_INCH) * 16) / 16) * MM_PER_INCH || mm;
