import type { Finding, FindingLevel } from '$lib/plan/document.ts';
import type { Lengths } from '$lib/project/units.ts';
import { figure, lengthText } from '$lib/views/figures.ts';

/** How each level is told, worst first: by a word and a symbol, so that colour is only a help. */
export const levels: readonly { readonly level: FindingLevel; readonly word: string; readonly symbol: string }[] = [
  { level: 'fault', word: 'Fault', symbol: '✕' },
  { level: 'caution', word: 'Caution', symbol: '▲' },
  { level: 'note', word: 'Note', symbol: '○' },
];

/** Lengths and angles are read to a tenth; a bare number is a ratio, where a tenth is much. */
const decimals = (unit: string): number => (unit === '' ? 2 : 1);

const withUnit = (value: number, unit: string, lengths: Lengths): string =>
  unit === 'mm'
    ? lengthText(value, lengths)
    : `${figure(value, decimals(unit))}${unit === '' || unit === '°' ? unit : `\u202f${unit}`}`;

/** `62.3°, limit 60.0°`. */
export const limitText = (
  { value, limit, unit }: Pick<Finding, 'value' | 'limit' | 'unit'>,
  lengths: Lengths = 'mm',
): string => `${withUnit(value, unit, lengths)}, limit ${withUnit(limit, unit, lengths)}`;
