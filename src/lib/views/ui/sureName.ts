import { placeOf } from '$lib/document/fields.ts';
import type { SureKey } from '$lib/project/sure.ts';

/** What the form calls a measured value that may be off, in the middle of a sentence: `listener, ear height`. */
export const sureName = (key: SureKey): string => placeOf(`/sure/${key}`).replace(/^How sure, (.*), ±$/, '$1');
