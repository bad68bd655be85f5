import { formatNumber } from '$lib/views/ui/formatNumber.ts';

/** A frequency as it is read: three digits, without zeros that say nothing, and a unit. */
export const hertzText = (frequency: number): string =>
  frequency < 1000
    ? `${formatNumber(frequency, 0)}\u202fHz`
    : `${Number(formatNumber(frequency / 1000, frequency < 10_000 ? 2 : 1))}\u202fkHz`;

/** On an axis: `500`, `2k`. */
export const tickText = (frequency: number): string => (frequency < 1000 ? String(frequency) : `${frequency / 1000}k`);
