import { angleText, fineLength, lengthWithUnit } from './lengthText.ts';
import type { LengthDisplay } from './units.ts';

/** One number of a sentence. A count and minutes are written bare: the sentence names what is counted. */
export type Quantity =
  | {
      readonly value: number;
      readonly unit: 'mm';
      /** Whether it is measured with a calliper, to a hundredth of a millimetre, and not with a tape. */
      readonly fine: boolean;
    }
  /** Degrees. */
  | { readonly value: number; readonly unit: '°' | 'count' | 'min' };

export type Quantities = Readonly<Record<string, Quantity>>;

/** A sentence that is put into words last: `{name}` in the template is the quantity of that name. */
export interface Sentence {
  readonly template: string;
  readonly quantities: Quantities;
}

/** Lengths as a tape shows them, and as a calliper does; a number of things; an angle in degrees. */
export const asMm = (value: number): Quantity => ({ value, unit: 'mm', fine: false });
export const asFineMm = (value: number): Quantity => ({ value, unit: 'mm', fine: true });
export const asCount = (value: number): Quantity => ({ value, unit: 'count' });
export const asDegrees = (value: number): Quantity => ({ value, unit: '°' });

const PLACE = /\{(\w+)\}/g;

/** The sentence with its numbers, lengths as the display has them. Throws where a place has no quantity: a mistake in the code. */
export const sentenceText = ({ template, quantities }: Sentence, display: LengthDisplay): string =>
  template.replace(PLACE, (_, name: string) => {
    const quantity = quantities[name];
    if (quantity === undefined) throw new Error(`the sentence has no quantity for {${name}}`);
    return quantityText(quantity, display);
  });

function quantityText(quantity: Quantity, display: LengthDisplay): string {
  if (quantity.unit === '°') return angleText(quantity.value);
  if (quantity.unit !== 'mm') return String(quantity.value);
  return quantity.fine ? fineLength(quantity.value, display) : lengthWithUnit(quantity.value, display);
}
