import { inBase, type Amount, type Reckoning } from './entryAmount.ts';
import { amountOf } from './entryGrammar.ts';
import { EntryRefusal } from './entryRefusal.ts';
import { tokensOf, type Token } from './entryTokens.ts';
import { entryUnits, nounOf, type EntryUnit, type Quantity } from './entryUnits.ts';
import { undust, type LengthUnit } from './units.ts';

/** A typed text as a value in the project's unit, or why it is none. */
export type Reading =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      /** What was expected, and where: `expected a number, got nothing more, at the end`. */
      readonly message: string;
      /** The stretch that is meant: from this character, counted from 0, up to but not including that one. */
      readonly from: number;
      readonly to: number;
      /** It is a number, and larger than any that can be held. */
      readonly tooLarge?: true;
    };

/** Longer than any sum that belongs in a field; what is longer was pasted by mistake. */
export const LONGEST_ENTRY = 120;

const BARE: EntryUnit = { names: ['number'], factor: 1 };

/**
 * What somebody typed into a field: a number or a sum of numbers with units (`600/2`, `18 3/4″`, `1′ 6 1/2″`, `47,6 cm`,
 * `2 × 305`, `12° 30′`, `2.8 kHz`, `68 °F`). A number without a unit is in the display unit for lengths, in the project's
 * own for all else. Never throws; the value is finite and never a negative zero. Ranges are checked elsewhere.
 */
export function readEntry(text: string, quantity: Quantity, unit: LengthUnit): Reading {
  if (text.length > LONGEST_ENTRY) {
    return refused(
      `expected at most ${LONGEST_ENTRY} characters, got ${text.length}`,
      LONGEST_ENTRY,
      text.length,
      text,
    );
  }
  const units = entryUnits[quantity];
  const base = units[0] ?? BARE;
  const bare = units.find(({ names: [name] }) => quantity === 'length' && name === unit) ?? base;
  try {
    const tokens = tokensOf(text, quantity);
    const amount = amountOf(tokens, { base, bare, units, quantity });
    if (amount.kind === 'ratio') {
      return refused(`expected ${nounOf(quantity)}, got one divided by another`, 0, text.length, text);
    }
    const value = valueOf(amount, tokens, { base, bare, units, quantity });
    return Number.isFinite(value)
      ? { ok: true, value: value + 0 }
      : { ...refused(`expected a smaller number, got ${text.trim()}`, 0, text.length, text), tooLarge: true };
  } catch (refusal) {
    if (refusal instanceof EntryRefusal) return refused(refusal.message, refusal.from, refusal.to, text);
    throw refusal;
  }
}

/** A number typed in the project's own unit stays as typed to its last digit; what is reckoned loses its dust. */
function valueOf(amount: Amount, tokens: readonly Token[], { bare }: Reckoning): number {
  const unit = amount.kind === 'measure' ? amount.unit : bare;
  const value = inBase(amount.amount, unit);
  const reckoned = tokens.filter(({ kind }) => kind === 'number' || kind === 'part').length > 1;
  return reckoned || unit.factor !== 1 || unit.offset ? undust(value) : value;
}

function refused(message: string, from: number, to: number, text: string): Reading & { readonly ok: false } {
  const place = from >= text.trimEnd().length ? 'at the end' : `at character ${from + 1}`;
  return { ok: false, message: text.trim() === '' ? message : `${message}, ${place}`, from, to };
}
