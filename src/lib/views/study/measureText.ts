import type { LengthDisplay } from '$lib/project/units.ts';
import type { Measure } from '$lib/study/measure.ts';
import { angleText, formatNumber, lengthText, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';

/** A value of a measure, with its unit, as the page shows it; what it means that there is none. */
export function measureText(measure: Measure, value: number | null, display: LengthDisplay): string {
  if (value === null) return measure.missing ? 'none' : 'no answer';
  return valueText(value, measure.unit, display, lengthText);
}

/** A value with its unit, as finely as anybody can set or hear it. @param length how a length is written: as a tape reads it. */
export function valueText(
  value: number,
  unit: Measure['unit'],
  display: LengthDisplay,
  length: typeof tapeText = tapeText,
): string {
  switch (unit) {
    case '°':
      return angleText(value);
    case 'mm':
      return length(value, display);
    case '':
      return formatNumber(value, 0);
    default:
      return quantityText(value, DECIMALS[unit], unit);
  }
}

/** No digit that nobody could set or hear. */
const DECIMALS = { µs: 0, dB: 1, kg: 2, '%': 1 } as const;
