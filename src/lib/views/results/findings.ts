import type { Finding } from '$lib/solution/findings/finding.ts';
import type { FindingLevel } from '$lib/solution/findings/told.ts';
import type { QuantityUnit } from '$lib/project/sentence.ts';
import type { Lengths } from '$lib/project/units.ts';
import { signs } from '$lib/views/ui/signs.ts';
import { formatNumber, lengthText } from '$lib/views/ui/formatNumber.ts';

/** How each level is told, worst first: by a word and a symbol, so that colour is only a help. */
export const levels: readonly { readonly level: FindingLevel; readonly word: string; readonly symbol: string }[] = [
  { level: 'fault', word: 'Fault', symbol: signs.fault },
  { level: 'caution', word: 'Caution', symbol: signs.caution },
  { level: 'note', word: 'Note', symbol: signs.note },
];

/** What is measured is read to a tenth; a ratio, of which a tenth is much, to a hundredth. */
function withUnit(value: number, unit: QuantityUnit, lengths: Lengths): string {
  switch (unit) {
    case 'mm':
      return lengthText(value, lengths);
    case 'count':
    case 'ratio':
      return formatNumber(value, unit === 'count' ? 0 : 2);
    case '°':
      return `${formatNumber(value, 1)}°`;
    default:
      return `${formatNumber(value, 1)}\u202f${unit}`;
  }
}

/** `62.3°, limit 60.0°`. */
export const limitText = (
  { value, limit, unit }: Pick<Finding, 'value' | 'limit' | 'unit'>,
  lengths: Lengths = 'mm',
): string => `${withUnit(value, unit, lengths)}, limit ${withUnit(limit, unit, lengths)}`;
