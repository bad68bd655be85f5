import type { Unit } from '$lib/solution/working/term.ts';
import { formatNumber } from '$lib/views/ui/formatNumber.ts';

/** Decimals with which a number goes into a formula: enough to follow it on paper. */
const decimals: Readonly<Record<Unit, number>> = {
  mm: 2,
  in: 4,
  '°': 3,
  'm/s': 2,
  'mm/ms': 2,
  'in/ms': 4,
  µs: 1,
  ms: 3,
  dB: 2,
  Hz: 0,
  kg: 3,
  'kg/m³': 0,
  N: 2,
  'm/s²': 3,
  'mm³': 0,
  'in³': 3,
  '°C': 1,
  '': 3,
};

/** The number without its unit, and without zeros that say nothing. */
export function numberText(value: number, unit: Unit): string {
  const text = formatNumber(value, decimals[unit]);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** The number with its unit. */
export const withUnit = (value: number, unit: Unit): string =>
  `${numberText(value, unit)}${unit === '' || unit === '°' ? unit : `\u202f${unit}`}`;
