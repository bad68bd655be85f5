import { angleText, coarseAngle, fineLength, lengthWithUnit, trimmed } from './lengthText.ts';
import { MILLIMETRES, type LengthDisplay } from './units.ts';

/** One number with its unit. A count and minutes are written bare: the sentence names what is counted. */
export type Quantity =
  | {
      readonly value: number;
      readonly unit: 'mm' | '°' | 'dB';
      /** Whether it is told to a hundredth, as a calliper and a saw have it, and not to a tenth. */
      readonly fine: boolean;
    }
  | { readonly value: number; readonly unit: 'Hz' | 'ms' | 'µs' | 'N' | '%' | 'ratio' | 'count' | 'min' };

export type QuantityUnit = Quantity['unit'];
export type Quantities = Readonly<Record<string, Quantity>>;

/** What is put into a sentence: a number, words as they are (a name that somebody chose), or a sentence within it. */
export type Piece = Quantity | string | Sentence;

/** A sentence that is put into words last: `{name}` in the template is the piece of that name. */
export interface Sentence {
  readonly template: string;
  readonly quantities: Readonly<Record<string, Piece>>;
}

/** Lengths as a tape shows them, and as a calliper does; a number of things; an angle in degrees, as a saw is set. */
export const asMm = (value: number): Quantity => ({ value, unit: 'mm', fine: false });
export const asFineMm = (value: number): Quantity => ({ value, unit: 'mm', fine: true });
export const asCount = (value: number): Quantity => ({ value, unit: 'count' });
export const asDegrees = (value: number): Quantity => ({ value, unit: '°', fine: true });
/** An angle in degrees as somebody judges it by; a level that is heard, and one that is measured. */
export const asAngle = (value: number): Quantity => ({ value, unit: '°', fine: false });
export const asLevel = (value: number): Quantity => ({ value, unit: 'dB', fine: false });
export const asFineLevel = (value: number): Quantity => ({ value, unit: 'dB', fine: true });
/** A number in a unit of which nobody needs two ways to tell it. */
export const asUnit = (value: number, unit: Exclude<QuantityUnit, 'mm' | '°' | 'dB'>): Quantity => ({ value, unit });

/** The same without its sign, where the sentence has a word for that. */
export const sizeOf = (quantity: Quantity): Quantity => ({ ...quantity, value: Math.abs(quantity.value) });

/**
 * A sentence with what is put into it kept apart: says`a lift of ${asMm(12)}`. Words that are put in stay as they are,
 * whatever is in them.
 */
export const says = ([first = '', ...rest]: TemplateStringsArray, ...pieces: readonly Piece[]): Sentence => ({
  template: first + rest.map((text, index) => `{${index}}${text}`).join(''),
  quantities: Object.fromEntries(pieces.map((piece, index) => [index, piece])),
});

/** Several as one, with so much between them. */
export const joined = (sentences: readonly Piece[], between: string): Sentence => ({
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

/** The sentence as page and paper have it, lengths as the display has them. */
export const sentenceText = (sentence: Sentence, display: LengthDisplay): string =>
  written(sentence, (quantity) => quantityText(quantity, display));

/** The sentence as a terminal and a file have it: in mm, with no other characters than a keyboard has. */
export const plainText = (sentence: Sentence): string => written(sentence, plainQuantity);

/** A quantity as `plainText` writes it. */
export const plainQuantity = (quantity: Quantity): string =>
  quantityText(quantity, MILLIMETRES).replaceAll('\u202f', ' ').replaceAll('−', '-');

const PLACE = /\{(\w+)\}/g;

/** Throws where a place has no piece: a mistake in the code. */
const written = ({ template, quantities }: Sentence, write: (quantity: Quantity) => string): string =>
  template.replace(PLACE, (_, name: string) => {
    const piece = quantities[name];
    if (piece === undefined) throw new Error(`the sentence has no quantity for {${name}}`);
    if (typeof piece === 'string') return piece;
    return 'template' in piece ? written(piece, write) : write(piece);
  });

/** A quantity with its unit, as page and paper have it. */
function quantityText(quantity: Quantity, display: LengthDisplay): string {
  const { value, unit } = quantity;
  switch (unit) {
    case 'mm':
      return quantity.fine ? fineLength(value, display) : lengthWithUnit(value, display);
    case '°':
      return quantity.fine ? angleText(value) : coarseAngle(value);
    case 'dB':
      return withUnit(value, quantity.fine ? 2 : 1, unit);
    case 'Hz':
      return value < 1000 ? withUnit(value, 0, unit) : withUnit(value / 1000, 2, 'kHz');
    case 'ratio':
      return trimmed(value, 2);
    case 'count':
    case 'min':
      return String(value);
    default:
      return withUnit(value, decimals[unit], unit);
  }
}

const decimals = { ms: 2, µs: 0, N: 1, '%': 1 } as const;

const withUnit = (value: number, most: number, unit: string): string => `${trimmed(value, most)}\u202f${unit}`;
