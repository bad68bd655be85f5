import type { Field } from './field.ts';
import { supplyFields } from './fields.ts';
import { firstFields } from './firstFields.ts';
import { lateFields } from './lateFields.ts';

/** Every input of a project, by its pointer with `*` for a place in a list. From here on `fields.ts` knows them all. */
export const fieldTable: Readonly<Record<string, Field>> = { ...firstFields, ...lateFields };

supplyFields(fieldTable);
