import type { LengthDisplay } from '$lib/project/units.ts';

/** What each choice of the field stands for. */
const displays: Readonly<Record<string, LengthDisplay>> = {
  mm: { length: 'mm', fraction: null },
  in: { length: 'in', fraction: null },
  'in 8': { length: 'in', fraction: 8 },
  'in 16': { length: 'in', fraction: 16 },
  'in 32': { length: 'in', fraction: 32 },
  'in 64': { length: 'in', fraction: 64 },
};

/** The choice that stands for a display. */
export const choiceOf = ({ length, fraction }: LengthDisplay): string =>
  length === 'in' && fraction !== null ? `in ${fraction}` : length;

/** The display that a choice stands for; millimetres for what is no choice. */
export const displayOf = (choice: string): LengthDisplay =>
  (Object.hasOwn(displays, choice) ? displays[choice] : undefined) ?? { length: 'mm', fraction: null };
