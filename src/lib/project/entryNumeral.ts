/** Spaces that group digits, and do not part one number from the next: no-break, figure, thin and narrow ones. */
const GROUPING = '\u00a0\u2007\u2009\u202f';

/** The keyboard's space groups digits too, unless what follows could be a fraction: `1 400`, but not `1 200/250`. */
const KEYED = ' \\d{3}(?!\\d|\\s*[/÷⁄∕]|\\s*[½⅓⅔¼¾⅛⅜⅝⅞])';

/** One written number, without sign: digits, their separators, perhaps a power of ten. */
const NUMERAL = new RegExp(
  `^(?:\\d+(?:[.,]\\d+|[${GROUPING}]\\d{3}(?!\\d)|${KEYED})*[.,]?|[.,]\\d+)(?:e[+-]?\\d+(?![\\d.,]))?`,
  'i',
);

interface Numeral {
  readonly value: number;
  /** Characters it takes up. */
  readonly length: number;
  /** Whether it is a row of digits and nothing else. */
  readonly plain: boolean;
}

/** A written number that could mean two things, or none: in words. */
interface Doubt {
  readonly doubt: string;
  readonly length: number;
}

/**
 * The number that a text begins with; null where it begins with none. A point or a comma may part the decimals; where both
 * stand, or one repeatedly, the last kind parts and the other groups by threes. `1,234` could be either and is refused;
 * `1.234` is a decimal, as everything here writes it.
 */
export function numeralAt(text: string): Numeral | Doubt | null {
  const [written] = NUMERAL.exec(text) ?? [];
  if (written === undefined) return null;
  const [mantissa = '', power = '0'] = written.toLowerCase().split('e');
  const digits = decimalOf(mantissa);
  const length = written.length;
  if (typeof digits !== 'string') return { ...digits, length };
  return { value: Number(`${digits}e${power}`), length, plain: /^\d+$/.test(written) };
}

const SPACES = new RegExp(`[${GROUPING} ]`, 'g');
const SPACED = new RegExp(`^\\d{1,3}(?:[${GROUPING} ]\\d{3})+(?:[.,]\\d*)?$`);
const GROUPED = /^[1-9]\d{0,2}(?:([.,])\d{3})(?:\1\d{3})*(?:(?!\1)[.,]\d*)?$/;

/** The digits with a decimal point, or the doubt. */
function decimalOf(written: string): string | { readonly doubt: string } {
  if (/[^\d.,]/.test(written)) {
    return SPACED.test(written) ? written.replace(SPACES, '').replace(',', '.') : unclear(written);
  }
  const separators = written.replace(/\d/g, '');
  if (separators.length <= 1) {
    return separators === ',' && GROUPED.test(written) ? eitherOr(written) : written.replace(',', '.');
  }
  const [group = ''] = separators;
  return GROUPED.test(written) ? written.replaceAll(group, '').replace(',', '.') : unclear(written);
}

const unclear = (written: string) => ({
  doubt: `expected one decimal point, or groups of three digits, got ${written}`,
});

const eitherOr = (written: string) => ({
  doubt: `expected ${written.replace(',', '')} or ${written.replace(',', '.')}, got ${written}, which could be either`,
});
