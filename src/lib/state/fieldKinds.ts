import type { Range } from '$lib/project/ranges.ts';
import type { ChoiceField, NumberField, SwitchField, TextField } from './field.ts';

/** What one press of an arrow key adds, by the range's unit. */
const steps: Readonly<Record<string, number>> = {
  mm: 1,
  '°': 0.5,
  kg: 0.1,
  Hz: 50,
  '°C': 1,
  'kg/m³': 10,
  'mm/s': 1,
  'mm³/s': 0.5,
};

export const number = (label: string, range: Range, help: string, more: Partial<NumberField> = {}): NumberField => ({
  kind: 'number',
  label,
  range,
  help,
  step: range.whole ? 1 : (steps[range.unit] ?? 0.05),
  ...more,
});
export const text = (label: string, help: string): TextField => ({ kind: 'text', label, help });
export const choice = (label: string, help: string, options: ChoiceField['options'] = []): ChoiceField => ({
  kind: 'choice',
  label,
  help,
  options,
});
export const onOff = (label: string, help: string): SwitchField => ({ kind: 'switch', label, help });

/** For what is a few millimetres, or a fraction of one. */
export const fine = { step: 0.1 };
export const finest = { step: 0.05 };
