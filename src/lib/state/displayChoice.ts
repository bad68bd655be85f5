import type { LengthDisplay } from '$lib/project/units.ts';

/** The ways to show lengths as one choice: what it is called in a list, and in words. */
export const displayOptions = [
  ['mm', 'millimetres'],
  ['in', 'inches, as decimals'],
  ['in 8', 'inches, to 1/8'],
  ['in 16', 'inches, to 1/16'],
  ['in 32', 'inches, to 1/32'],
  ['in 64', 'inches, to 1/64'],
] as const;

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
