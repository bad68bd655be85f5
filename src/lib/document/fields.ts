import type {
  ChoiceField,
  ColourField,
  Field,
  NumberField,
  SwitchField,
  TextField,
} from '$lib/project/fields/field.ts';
import { readingFields } from '$lib/project/fields/built.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { parentOf, patternOf, stepsOf, valueAt } from './pointer.ts';

interface Kinds {
  readonly number: NumberField;
  readonly text: TextField;
  readonly colour: ColourField;
  readonly choice: ChoiceField;
  readonly switch: SwitchField;
}

/** The field at a pointer; undefined where none is. The two ends of a pair have a field each, entries of a list share one. */
export const fieldAt = (pointer: string): Field | undefined =>
  inTable(patternOf(pointer)) ?? inTable(`${patternOf(parentOf(pointer) ?? '')}/${stepsOf(pointer).at(-1) ?? ''}`);

/** The field at a pointer of a document. What a reading's number may be hangs on what is read. */
export function fieldIn(document: unknown, pointer: string): Field | undefined {
  const held = parentOf(pointer) ?? '';
  const field = fieldAt(pointer);
  const what = field && valueAt(document, `${held}/what`);
  const kind = typeof what === 'string' && Object.hasOwn(readingFields, what) ? readingFields[what] : undefined;
  return kind?.[stepsOf(pointer).at(-1) ?? ''] ?? field;
}

const inTable = (pattern: string): Field | undefined =>
  Object.hasOwn(fieldTable, pattern) ? fieldTable[pattern] : undefined;

/** The field of a control. Throws where the table has none of this kind: a control and the table must agree. */
export function fieldOf<Kind extends keyof Kinds>(kind: Kind, pointer: string): Kinds[Kind];
export function fieldOf(kind: string, pointer: string): Field {
  const field = fieldAt(pointer);
  if (field?.kind !== kind) throw new Error(`the field table has no ${kind} at ${pointer}`);
  return field;
}

/** What the parts of a project that are not fields are called. `#` stands for the place in the list, from 1. */
const places: Readonly<Record<string, string>> = {
  '/speaker': 'Loudspeaker',
  '/speaker/drivers': 'Drivers',
  '/speaker/drivers/*': 'Driver #',
  '/speaker/crossovers': 'Crossovers',
  '/speaker/crossovers/*': 'Crossover #',
  '/stock': 'Stock',
  '/stock/*': 'Board #',
  '/printer/bed': 'Bed',
  '/stock/*/offcuts': 'Offcuts',
  '/stock/*/offcuts/*': 'Offcut #',
  '/cutter': 'Cutter',
  '/shop': 'Machines',
  '/sure': 'How sure',
  '/layouts/*/desk': 'Desk',
  '/layouts/*/desk/outline/points': 'Corners',
  '/layouts/*/desk/outline/points/*': 'Corner #',
  '/layouts/*/room': 'Room',
  '/layouts/*/room/walls': 'Walls',
  '/layouts/*/room/walls/*': 'Wall #',
  '/layouts/*/monitors': 'Screens',
  '/layouts/*/monitors/*': 'Screen #',
  '/layouts/*/listener': 'Listener',
  '/layouts/*/listener/postures/*': 'Posture #',
  '/layouts/*/placement': 'Placement',
  '/layouts/*/aim': 'Aim',
  '/layouts/*/stand': 'Stand',
  '/layouts/*/arrangement': 'Sheets',
  '/layouts/*/built': 'As built',
  '/layouts/*/built/sides/left/readings/*': 'Reading # of the left stand',
  '/layouts/*/built/sides/right/readings/*': 'Reading # of the right stand',
  '/layouts/*/built/record': 'Record',
  '/layouts/*/built/heard/*': 'Measured response #',
};

/**
 * Pointer of what a fault belongs to: its own field, or the nearest field or group above it. Null for the project as a
 * whole.
 */
export function ownerOf(pointer: string): string | null {
  for (let at: string | null = pointer; at !== null; at = parentOf(at)) {
    if (fieldAt(at) ?? places[patternOf(at)]) return at;
  }
  return null;
}

/** Where a pointer leads, in the words of the form: `Loudspeaker, driver 1, centre height`. */
export function placeOf(pointer: string): string {
  const steps = stepsOf(pointer);
  const words = steps.flatMap((_, index) => {
    const part = steps.slice(0, index + 1);
    const at = `/${part.join('/')}`;
    const word = fieldAt(at)?.label ?? places[patternOf(at)]?.replace('#', String(Number(part.at(-1)) + 1));
    return word === undefined ? [] : [word];
  });
  const shortened = words.filter((word, index) => !words[index + 1]?.startsWith(word.replace(/s$/, ' ')));
  return shortened.map((word, index) => (index === 0 ? word : lowerFirst(word))).join(', ') || 'Project';
}

const lowerFirst = (word: string): string => word.slice(0, 1).toLowerCase() + word.slice(1);
