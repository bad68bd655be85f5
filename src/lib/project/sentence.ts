import { fineLength, lengthWithUnit, trimmed } from './lengthText.ts';
import { MILLIMETRES, type LengthDisplay } from './units.ts';

/** A number with its unit, and how it is told. A ratio, a count and minutes are written bare: the sentence names what is counted. */
export interface Quantity {
  readonly value: number;
  readonly unit: 'mm' | '°' | 'dB' | 'Hz' | 'ms' | 'µs' | 'N' | '%' | 'ratio' | 'count' | 'min';
  /** Decimals at most, in mm and in the units that have no others; null for all that it has, as it was typed. */
  readonly decimals: number | null;
  /** Whether it has all those decimals, zeros at the end among them. */
  readonly fixed?: true;
  /** Of several lengths in mm that share their unit, one that leaves it to the last. In inches each has its own. */
  readonly bare?: true;
}

export type QuantityUnit = Quantity['unit'];
export type Quantities = Readonly<Record<string, Quantity>>;

/** What is put into a sentence: a number, or words. */
export type Piece = Quantity | Words;

/** Words as they are (a name that somebody chose, a sentence without a number), or a sentence to be put into words. */
export type Words = string | Sentence;

/** A sentence that is put into words last: `{name}` in the template is the piece of that name. */
export interface Sentence {
  readonly template: string;
  readonly quantities: Readonly<Record<string, Piece>>;
  /** How page and paper word the same, where a terminal and a file have it in a set form. */
  readonly page?: Words;
}

/** Lengths as a tape shows them, as a caliper does, and as they were typed. */
export const asMm = (value: number): Quantity => ({ value, unit: 'mm', decimals: 1 });
export const asFineMm = (value: number): Quantity => ({ value, unit: 'mm', decimals: 2 });
export const asTyped = (value: number): Quantity => ({ value, unit: 'mm', decimals: null });
/** A length with so many decimals always. */
export const asFixed = (value: number, decimals: number): Quantity => ({ value, unit: 'mm', decimals, fixed: true });
/** A length whose unit the next one names. */
export const bare = (length: Quantity): Quantity => ({ ...length, bare: true });
/** A number of things. */
export const asCount = (value: number): Quantity => ({ value, unit: 'count', decimals: null });
/** An angle in degrees as a saw is set, and as somebody judges by it; a level that is measured, and one that is heard. */
export const asDegrees = (value: number): Quantity => ({ value, unit: '°', decimals: 2 });
export const asAngle = (value: number): Quantity => ({ value, unit: '°', decimals: 1 });
export const asFineLevel = (value: number): Quantity => ({ value, unit: 'dB', decimals: 2 });
export const asLevel = (value: number): Quantity => ({ value, unit: 'dB', decimals: 1 });
/** A number in a unit of which nobody needs two ways to tell it. */
export const asUnit = (value: number, unit: keyof typeof usual): Quantity => ({ value, unit, decimals: usual[unit] });

const usual = { Hz: 0, ms: 2, µs: 0, N: 1, '%': 1, ratio: 2 } as const;

/** The same without its sign, where the sentence has a word for that. */
export const sizeOf = (quantity: Quantity): Quantity => ({ ...quantity, value: Math.abs(quantity.value) });

/**
 * A sentence with what is put into it kept apart: says`a lift of ${asMm(12)}`. Words that are put in stay as they are,
 * whatever is in them; a bare number is a count.
 */
export const says = ([first = '', ...rest]: TemplateStringsArray, ...put: readonly (Piece | number)[]): Sentence => ({
  template: first + rest.map((text, index) => `{${index}}${text}`).join(''),
  quantities: Object.fromEntries(
    put.map((piece, index) => [index, typeof piece === 'number' ? asCount(piece) : piece]),
  ),
});

/** The first for a terminal and a file, the second for page and paper. */
export const onPage = (plain: Words, page: Words): Sentence => ({ ...says`${plain}`, page });

/**
 * What keeps a sound project from being made: what it takes, what there is, and what helps. A terminal and a file have it in the form of
 * all faults, `expected a slot with 6 mm of wood over it, got 2 mm: make it 4 mm shallower`; a page as a person would say it.
 */
export function needs(needed: Words, found: Piece | number, helps?: Piece): Sentence {
  const told = helps === undefined ? says`${found}` : says`${found}: ${helps}`;
  return onPage(says`expected ${needed}, got ${told}`, says`Needs ${needed}, not ${told}`);
}

/** Several as one, with so much between them. */
export const joined = (sentences: readonly Words[], between: string): Sentence => ({
  template: sentences.map((_, index) => `{${index}}`).join(between),
  quantities: Object.fromEntries(sentences.map((piece, index) => [index, piece])),
});

/** The same with a capital to begin with: the template's, or that of the words that it begins with. */
export function capital({ template, quantities }: Sentence): Sentence {
  const name = /^\{(\w+)\}/.exec(template)?.[1];
  const first = name === undefined ? undefined : quantities[name];
  if (name === undefined || first === undefined) return { template: upper(template), quantities };
  if (typeof first === 'string') return { template, quantities: { ...quantities, [name]: upper(first) } };
  return 'template' in first
    ? { template, quantities: { ...quantities, [name]: capital(first) } }
    : { template, quantities };
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The words, each said once. */
export const distinct = (all: readonly Words[]): Words[] => [
  ...new Map(all.map((words) => [plainText(words), words])).values(),
];

/** The words as page and paper have them, lengths as the display has them. */
export const sentenceText = (words: Words, display: LengthDisplay): string =>
  written(words, (quantity) => quantityText(quantity, display), true);

/** The words as a terminal and a file have them: in mm, with no other characters than a keyboard has. */
export const plainText = (words: Words): string => written(words, plainQuantity, false);

/** A quantity as `plainText` writes it. */
export const plainQuantity = (quantity: Quantity): string =>
  quantityText(quantity, MILLIMETRES).replaceAll('\u202f', ' ').replaceAll('−', '-');

const PLACE = /\{(\w+)\}/g;

/** Throws where a place has no piece: a mistake in the code. */
function written(words: Words, write: (quantity: Quantity) => string, onAPage: boolean): string {
  if (typeof words === 'string') return words;
  if (onAPage && words.page !== undefined) return written(words.page, write, onAPage);
  return words.template.replace(PLACE, (_, name: string) => {
    const piece = words.quantities[name];
    if (piece === undefined) throw new Error(`the sentence has no quantity for {${name}}`);
    return typeof piece === 'object' && 'unit' in piece ? write(piece) : written(piece, write, onAPage);
  });
}

/** A quantity with its unit, as page and paper have it. */
function quantityText({ value, unit, decimals, fixed, bare: isBare }: Quantity, display: LengthDisplay): string {
  const digits = digitsOf(value, decimals, fixed === true);
  switch (unit) {
    case 'mm':
      if (display.length === 'in') return decimals === 1 ? lengthWithUnit(value, display) : fineLength(value, display);
      return isBare ? digits : `${digits}\u202f${unit}`;
    case '°':
      return `${digits}${unit}`;
    case 'Hz':
      return value < 1000 ? `${digits}\u202f${unit}` : `${trimmed(value / 1000, 2)}\u202fkHz`;
    case 'ratio':
    case 'count':
    case 'min':
      return digits;
    default:
      return `${digits}\u202f${unit}`;
  }
}

function digitsOf(value: number, decimals: number | null, isFixed: boolean): string {
  if (decimals !== null && !isFixed) return trimmed(value, decimals);
  return (decimals === null ? String(value) : value.toFixed(decimals)).replace('-', '−');
}
