import type { EntryUnit, Quantity } from './entryUnits.ts';
import { nounOf } from './entryUnits.ts';

/**
 * What a stretch of a typed text comes to. `bare`: numbers alone, which count in the display unit once they have to be a
 * quantity; `measure`: so much of a unit; `ratio`: one quantity over another, which no longer is one.
 */
export type Amount =
  | { readonly kind: 'bare' | 'ratio'; readonly amount: number }
  | {
      readonly kind: 'measure';
      readonly amount: number;
      readonly unit: EntryUnit;
      /** Written as one number and its unit: then a number before a stroke is its numerator, as in `3/4 in`. */
      readonly literal: boolean;
    };

/** What the amounts of one text are reckoned in. */
export interface Reckoning {
  /** The project's unit. */
  readonly base: EntryUnit;
  /** What bare numbers count in. */
  readonly bare: EntryUnit;
  /** All that may be typed. */
  readonly units: readonly EntryUnit[];
  readonly quantity: Quantity;
}

/** So much of a unit in the project's own. */
export const inBase = (amount: number, { factor, offset = 0 }: EntryUnit): number => amount * factor + offset;

export const negative = (amount: Amount): Amount => ({ ...amount, amount: -amount.amount });

/** Whether it may be reckoned with: degrees of a scale with a zero of its own may not. */
const isScaled = (amount: Amount): boolean => amount.kind === 'measure' && amount.unit.offset !== undefined;

const alone = ({ quantity }: Reckoning): string => `expected ${nounOf(quantity)} with a unit to stand alone`;

/** Two amounts added up, or the second taken away (`by` −1); in words why not where they do not go together. */
export function sum(a: Amount, b: Amount, by: 1 | -1, reckoning: Reckoning): Amount | string {
  if (a.kind !== 'measure' && b.kind !== 'measure') {
    return { kind: a.kind === 'ratio' ? 'ratio' : b.kind, amount: a.amount + by * b.amount };
  }
  if (isScaled(a) || isScaled(b)) return alone(reckoning);
  if (a.kind === 'ratio' || b.kind === 'ratio') {
    return `expected ${nounOf(reckoning.quantity)} to add to, got one divided by another`;
  }
  const { base, bare } = reckoning;
  const whole = (one: Amount): number => inBase(one.amount, one.kind === 'measure' ? one.unit : bare);
  return { kind: 'measure', amount: whole(a) + by * whole(b), unit: base, literal: false };
}

/** As `sum`, multiplied. */
export function product(a: Amount, b: Amount, reckoning: Reckoning): Amount | string {
  if (isScaled(a) || isScaled(b)) return alone(reckoning);
  if (a.kind === 'measure' && b.kind === 'measure') {
    return `expected ${nounOf(reckoning.quantity)} times a number, got it times another`;
  }
  const amount = a.amount * b.amount;
  if (a.kind === 'measure') return { ...a, amount, literal: false };
  if (b.kind === 'measure') return { ...b, amount, literal: false };
  return { kind: a.kind === 'ratio' ? 'ratio' : b.kind, amount };
}

/** As `sum`, the first divided by the second. */
export function quotient(a: Amount, b: Amount, reckoning: Reckoning): Amount | string {
  if (b.amount === 0) return 'expected a number other than 0 to divide by';
  if (isScaled(a)) return alone(reckoning);
  if (b.kind !== 'measure') {
    const amount = a.amount / b.amount;
    return a.kind === 'measure' ? { ...a, amount, literal: false } : { kind: a.kind, amount };
  }
  if (a.kind === 'measure') {
    return isScaled(b)
      ? alone(reckoning)
      : { kind: 'ratio', amount: inBase(a.amount, a.unit) / inBase(b.amount, b.unit) };
  }
  if (a.kind === 'bare' && b.literal) return { ...b, amount: a.amount / b.amount, literal: false };
  return `expected a number to divide by, got ${nounOf(reckoning.quantity)}`;
}
