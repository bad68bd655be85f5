import { EntryRefusal } from './entryRefusal.ts';
import { numeralAt } from './entryNumeral.ts';
import { unitAt, unitList, type EntryUnit, type Quantity } from './entryUnits.ts';

export type Sign = '+' | '-' | '*' | '/' | '(' | ')';

interface Placed {
  /** Its first character, counted from 0, and the one after its last. */
  readonly from: number;
  readonly to: number;
  /** Whether it follows the one before it without a space. */
  readonly tight: boolean;
}

export type Token = Placed &
  (
    | { readonly kind: 'number'; readonly value: number; readonly plain: boolean }
    /** A fraction that is one character: ½. */
    | { readonly kind: 'part'; readonly value: number }
    | { readonly kind: 'unit'; readonly unit: EntryUnit }
    /** `keyboard`: the minus is the hyphen of the keyboard, which in the trade also joins feet and inches. */
    | { readonly kind: 'sign'; readonly sign: Sign; readonly keyboard: boolean }
    | { readonly kind: 'end' }
  );

const signs: Readonly<Record<string, Sign>> = {
  '+': '+',
  '-': '-',
  '−': '-',
  '–': '-',
  '‐': '-',
  '‑': '-',
  '*': '*',
  '×': '*',
  x: '*',
  X: '*',
  '·': '*',
  '⋅': '*',
  '/': '/',
  '÷': '/',
  '⁄': '/',
  '∕': '/',
  '(': '(',
  ')': ')',
};

const KEYBOARD = /^[-‐‑]$/;

const parts: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** The text cut into numbers, units and signs, an end last. Spaces of every kind only part them. */
export function tokensOf(text: string, quantity: Quantity): Token[] {
  const tokens: Token[] = [];
  let from = 0;
  let tight = true;
  while (from < text.length) {
    const rest = text.slice(from);
    const [space = ''] = /^\s+/.exec(rest) ?? [];
    if (space !== '') {
      tight = false;
      from += space.length;
      continue;
    }
    const token = tokenAt(rest, from, tight, quantity);
    tokens.push(token);
    from = token.to;
    tight = true;
  }
  return [...tokens, { kind: 'end', from, to: from, tight }];
}

function tokenAt(rest: string, from: number, tight: boolean, quantity: Quantity): Token {
  const placed = (length: number): Placed => ({ from, to: from + length, tight });
  const numeral = numeralAt(rest);
  if (numeral && 'doubt' in numeral) throw new EntryRefusal(numeral.doubt, from, from + numeral.length);
  if (numeral) return { kind: 'number', value: numeral.value, plain: numeral.plain, ...placed(numeral.length) };
  const found = unitAt(rest, quantity);
  if (found) return { kind: 'unit', unit: found.unit, ...placed(found.length) };
  const [character = ''] = rest;
  const sign = signs[character];
  if (sign && !WORD.test(rest)) {
    return { kind: 'sign', sign, keyboard: KEYBOARD.test(character), ...placed(character.length) };
  }
  const part = parts[character];
  if (part !== undefined) return { kind: 'part', value: part, ...placed(character.length) };
  throw unknownAt(rest, from, quantity);
}

/** An x that begins a word multiplies nothing. */
const WORD = /^x\p{L}/iu;
const LONGEST_SHOWN = 20;

function unknownAt(rest: string, from: number, quantity: Quantity): EntryRefusal {
  const [word = ''] = /^(?:[\p{L}°]+|.)/su.exec(rest) ?? [];
  const shown = word.length > LONGEST_SHOWN ? `${word.slice(0, LONGEST_SHOWN)}…` : word;
  const expected = /^[\p{L}°]/u.test(word) ? unitList(quantity) : 'a number, a unit or one of + − × ÷ ( )';
  return new EntryRefusal(`expected ${expected}, got “${shown}”`, from, from + word.length);
}
