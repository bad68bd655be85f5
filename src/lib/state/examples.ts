import { entryText } from '$lib/project/entry.ts';
import { demoProject } from '$lib/project/demo.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import type { Field } from '$lib/project/fields/field.ts';
import { valueAt } from './pointer.ts';

/** What a field holds in the project that opens first, as one would type it: `1180`. Undefined where that has nothing. */
export function exampleAt(pointer: string, field: Field, unit: LengthUnit): string | undefined {
  const value = valueAt(demoProject, pointer.replace(/\/\d+(?=\/|$)/g, '/0'));
  if (field.kind === 'number' && typeof value === 'number') return entryText(value, field, unit);
  return field.kind === 'text' && typeof value === 'string' ? value : undefined;
}
