import { lengthWithUnit } from '$lib/project/lengthText.ts';
import { fromMillimetres, MM_PER_INCH, unitOf, type LengthDisplay, type Lengths } from '$lib/project/units.ts';

/** Numbers as the page shows them: rounded for reading, with their unit, a true minus, and no break in between. */

const NARROW = '\u202f';
const MINUS = '\u2212';

/** A number with so many decimals. What rounds to nothing has no sign. */
export function formatNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** Decimals of a shown length: a tenth of a millimetre, or about as much in inches. */
const LENGTH_DECIMALS = { mm: 1, in: 3 } as const;

/** A length; as a fraction of an inch unless it is shorter than the smallest that is shown: decimals say more then. */
export function lengthText(mm: number, lengths: Lengths): string {
  const unit = unitOf(lengths);
  const decimals = formatNumber(fromMillimetres(mm, unit), LENGTH_DECIMALS[unit]);
  if (typeof lengths !== 'string' && hasFractions(lengths)) {
    // What the decimals do not show either is nothing, not a very small length.
    if (Number(decimals) === 0) return lengthWithUnit(0, lengths);
    if (Math.abs(mm) >= MM_PER_INCH / lengths.fraction) return lengthWithUnit(mm, lengths);
  }
  return `${decimals}${NARROW}${unit}`;
}

const hasFractions = (lengths: LengthDisplay): lengths is LengthDisplay & { fraction: number } =>
  lengths.length === 'in' && lengths.fraction !== null;

/** A tape leaves an angle some tenths of a degree uncertain: more digits would be none. */
export const angleText = (degrees: number): string => `${formatNumber(degrees, 1)}°`;

/** No tape is read to less than a sixteenth of an inch, or a tenth where it has no sixteenths. */
const TAPE_FRACTION = 16;
const TAPE_DECIMALS = { mm: 0, in: 1 } as const;

/** A worked-out length as a tape shows one: whole millimetres, sixteenths or tenths of an inch. */
export function tapeText(mm: number, lengths: Lengths): string {
  if (typeof lengths !== 'string' && hasFractions(lengths)) {
    return lengthText(mm, {
      ...lengths,
      fraction: lengths.fraction < TAPE_FRACTION ? lengths.fraction : TAPE_FRACTION,
    });
  }
  const unit = unitOf(lengths);
  return quantityText(fromMillimetres(mm, unit), TAPE_DECIMALS[unit], unit);
}

export const quantityText = (value: number, decimals: number, unit: string): string =>
  `${formatNumber(value, decimals)}${NARROW}${unit}`;

/** A whole number of things: `1 slice`, `54 slices`. */
export const countText = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Lengths that something lies between: `−2.7 to +5.3 mm`. */
export function rangeText([from, to]: readonly [number, number], lengths: Lengths): string {
  const unit = unitOf(lengths);
  const bare = (mm: number): string =>
    `${mm > 0 ? '+' : ''}${formatNumber(fromMillimetres(mm, unit), LENGTH_DECIMALS[unit])}`;
  return `${bare(from)} to ${bare(to)}${NARROW}${unit}`;
}
