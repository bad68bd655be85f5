import type { Words } from '$lib/project/sentence.ts';
import type { Range } from '$lib/project/range.ts';
import type { TermKey } from './termKey.ts';

/** One value of the project: what it may be, what it is called, and a few words on what to measure or why it matters. */
export type Field = NumberField | TextField | ColourField | ChoiceField | SwitchField;

/** The values of one thing, by their keys in the file and in the order of the form. */
export interface Fields {
  readonly [key: string]: Field | Fields;
}

interface Common {
  readonly label: string;
  /** One short line: what to measure, from where to where. */
  readonly hint: Words;
  /** The term that explains it, where its label does not say enough. */
  readonly term?: TermKey;
}

type Numeric = number | null | undefined;

export interface NumberField<Default = Numeric, Start = Numeric> extends Common, Range {
  readonly kind: 'number';
  /** Why the range ends where it does. */
  readonly reason: string;
  /** What one press of an arrow key adds, in the file's unit. */
  readonly step: number;
  /** What it is where the file does not say, null for none; left out where the file has to say. */
  readonly default?: Default;
  /** What it starts as when its thing is added or switched on, where that is not its default. */
  readonly start?: Start;
  /** What an empty field means; absent where a number is needed. */
  readonly empty?: string;
}

export interface TextField extends Common {
  readonly kind: 'text';
}

export interface ColourField extends Common {
  readonly kind: 'colour';
  /** `#rrggbb`. */
  readonly start: string;
}

export interface ChoiceField<Value extends string = string, Default = string | null | undefined> extends Common {
  readonly kind: 'choice';
  /** Values with the words that stand for them. Empty where names are the choices. */
  readonly options: readonly (readonly [value: Value, label: string])[];
  /** As of a number. */
  readonly default?: Default;
  /** Where the project's boards are the choices: what choosing none of them means. */
  readonly none?: string;
}

/** True or false; or, where it has fields, something that is there or null. */
export interface SwitchField<Default = unknown> extends Common {
  readonly kind: 'switch';
  readonly default?: Default;
  /** Of what is there while it is on. */
  readonly fields?: Fields;
}

export const isField = (entry: Field | Fields): entry is Field => typeof entry.kind === 'string';
