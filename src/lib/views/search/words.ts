import type { LengthDisplay } from '$lib/project/units.ts';
import type { Measure } from '$lib/study/measure.ts';
import { angleText, formatNumber, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';

/** Decimals of what is neither a length nor an angle. */
const DECIMALS: Record<Exclude<Measure['unit'], 'mm' | '°'>, number> = { µs: 0, dB: 1, kg: 2, '%': 1, '': 0 };

/** A value with its unit, as finely as anybody can set or hear it. */
export function valueText(value: number, unit: Measure['unit'], display: LengthDisplay): string {
  if (unit === 'mm') return tapeText(value, display);
  if (unit === '°') return angleText(value);
  if (unit === '%') return `${formatNumber(value, DECIMALS['%'])}${'\u202f'}%`;
  return unit === '' ? formatNumber(value, 0) : quantityText(value, DECIMALS[unit], unit);
}

/** A count, its thousands apart. */
export const countText = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');

/** What each measure is called in a layout's name. */
const SHORT: Readonly<Record<string, (value: string) => string>> = {
  'triangle-error': (value) => `${value} off 60°`,
  move: (value) => `moved ${value}`,
  'stand-height': (value) => `${value} high`,
  'safe-zone': (value) => `safe zone ${value}`,
  'desk-level': (value) => `desk ${value}`,
};

/** A name that says what a layout is: `0.4° off 60°, moved 87 mm`. */
export const nameOf = (
  aims: readonly Measure[],
  values: Readonly<Record<string, number | null>>,
  display: LengthDisplay,
): string =>
  aims
    .slice(0, 2)
    .flatMap(({ name, label, unit }) => {
      const value = values[name] ?? null;
      if (value === null) return [];
      const text = valueText(value, unit, display).replaceAll('\u202f', ' ');
      return [SHORT[name]?.(text) ?? `${label.toLowerCase()} ${text}`];
    })
    .join(', ') || 'searched';
