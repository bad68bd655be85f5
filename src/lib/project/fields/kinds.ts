import type { Words } from '$lib/project/sentence.ts';
import type { ChoiceField, ColourField, Fields, NumberField, SwitchField, TextField } from './field.ts';

/** Both ends of a range, and why they are there. */
export type Span = readonly [min: number, max: number, reason: string];

type More<Default, Start> = Partial<Pick<NumberField<Default, Start>, 'default' | 'start' | 'step' | 'empty' | 'term'>>;

/** @param step What one press of an arrow key adds where a field does not say. */
const numbers =
  (what: string, unit: string, step: number, whole?: true) =>
  <Default extends number | null | undefined = undefined, Start extends number | undefined = undefined>(
    label: string,
    hint: Words,
    [min, max, reason]: Span,
    more: More<Default, Start> = {},
  ): NumberField<Default, Start> => ({
    kind: 'number',
    label,
    hint,
    what,
    min,
    max,
    unit,
    ...(whole ? { whole } : {}),
    reason,
    step,
    ...more,
  });

export const length = numbers('a length', 'mm', 1);
/** A length across something. */
export const width = numbers('a width', 'mm', 1);
/** A length from a zero, to both sides. */
export const position = numbers('a position', 'mm', 1);
export const angle = numbers('an angle', '°', 0.5);
/** A direction in plan, from straight ahead, to both sides. */
export const bearing = numbers('a bearing', '°', 1);
export const count = numbers('a whole number', '', 1, true);
export const mass = numbers('a mass', 'kg', 0.1);
export const frequency = numbers('a frequency', 'Hz', 50);
export const temperature = numbers('a temperature', '°C', 1);
export const density = numbers('a density', 'kg/m³', 10);
export const speed = numbers('a speed', 'mm/s', 1);
export const rate = numbers('a rate', 'mm³/s', 0.5);
export const minutes = numbers('a time', 'min', 1);
export const fraction = numbers('a fraction', '', 0.05);
export const percentile = numbers('a percentile', '', 0.05);
/** How much one thing counts beside another. */
export const weight = numbers('a weight', '', 0.5);
export const price = numbers('a price', '', 1);
export const level = numbers('a level', 'dB', 1);
export const octaves = numbers('octaves', '', 0.01);
export const friction = numbers('a coefficient of friction', '', 0.05);

/** Steps for what is a few millimetres, or a fraction of one. */
export const FINE = 0.1;
export const FINEST = 0.05;

export const text = (label: string, hint: string): TextField => ({ kind: 'text', label, hint });

/** @param start What it is when colours are first given. */
export const colour = (label: string, hint: string, start: string): ColourField => ({
  kind: 'colour',
  label,
  hint,
  start,
});

/** One of a few words. */
export const choice = <const Value extends string, Default extends Value | undefined = undefined>(
  label: string,
  hint: string,
  options: ChoiceField<Value>['options'],
  more: Partial<Pick<ChoiceField<Value, Default>, 'default' | 'term'>> = {},
): ChoiceField<Value, Default> => ({ kind: 'choice', label, hint, options, ...more });

/** One of what the page knows: names in the project, ways to build. */
export const named = (label: string, hint: string, term?: ChoiceField['term']): ChoiceField<string, undefined> => ({
  kind: 'choice',
  label,
  hint,
  options: [],
  ...(term ? { term } : {}),
});

/** @param none What choosing none of the project's boards means. */
export const board = (label: string, hint: string, none: string): ChoiceField<string, null> => ({
  kind: 'choice',
  label,
  hint,
  options: [],
  none,
  default: null,
});

/** True or false. */
export const onOff = (
  label: string,
  hint: string,
  on: boolean,
  more: Partial<Pick<SwitchField, 'term'>> = {},
): SwitchField<boolean> => ({ kind: 'switch', label, hint, default: on, ...more });

/** Something that is not there until it is switched on. */
export const part = (
  label: string,
  hint: string,
  fields: Fields,
  more: Partial<Pick<SwitchField, 'term'>> = {},
): SwitchField<null> => ({ kind: 'switch', label, hint, fields, default: null, ...more });
