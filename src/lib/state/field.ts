import type { Range } from '$lib/project/ranges.ts';

/** One input of the project: what it is called, what it takes, and a few words on what to measure or why it matters. */
export type Field = NumberField | TextField | ChoiceField | SwitchField;

interface Common {
  readonly label: string;
  /** One short line: what to measure, from where to where. */
  readonly help: string;
}

export interface NumberField extends Common {
  readonly kind: 'number';
  readonly range: Range;
  /** What one press of an arrow key adds, in the file's unit. */
  readonly step: number;
  /** What an empty field means; absent where a number is needed. */
  readonly empty?: string;
}

export interface TextField extends Common {
  readonly kind: 'text';
}

export interface ChoiceField extends Common {
  readonly kind: 'choice';
  /** Values with the words that stand for them. Empty where the project's own names are the choices. */
  readonly options: readonly (readonly [value: string, label: string])[];
}

export interface SwitchField extends Common {
  readonly kind: 'switch';
}
