import { inBase, negative, product, quotient, sum, type Amount, type Reckoning } from './entryAmount.ts';
import { EntryRefusal } from './entryRefusal.ts';
import type { Sign, Token } from './entryTokens.ts';
import { unitList, type EntryUnit } from './entryUnits.ts';

/** Brackets and signs within each other: nobody writes more, and reading stays shallow. */
const DEEPEST = 24;

/** Digits of a mixed number's numerator: with three it could as well be a group of digits, as in `1 200/250`. */
const NUMERATOR_DIGITS = 2;

/** Marks on a rule: what a denominator of inches may be when a hyphen joins it to whole inches. */
const RULE_MARKS = [2, 4, 8, 16, 32, 64, 128];

/**
 * What a row of tokens comes to: sums of products of numbers with units, brackets and signs.
 *
 * @throws EntryRefusal at the first token that has no place there.
 */
export function amountOf(tokens: readonly Token[], reckoning: Reckoning): Amount {
  const end: Token = tokens.at(-1) ?? { kind: 'end', from: 0, to: 0, tight: true };
  let next = 0;
  let depth = 0;

  const peek = (ahead = 0): Token => tokens[next + ahead] ?? end;
  const isSign = (token: Token, ...wanted: readonly Sign[]): boolean =>
    token.kind === 'sign' && wanted.includes(token.sign);

  function refuse(expected: string, token: Token): never {
    throw new EntryRefusal(expected, token.from, token.to);
  }
  const check = (result: Amount | string, at: Token): Amount =>
    typeof result === 'string' ? refuse(result, at) : result;

  function deeper<Value>(read: () => Value): Value {
    if (depth === DEEPEST) refuse(`expected brackets at most ${DEEPEST} deep`, peek());
    depth += 1;
    const value = read();
    depth -= 1;
    return value;
  }

  function readSum(): Amount {
    let left = readProduct();
    while (isSign(peek(), '+', '-')) {
      const sign = peek();
      refuseJoiningHyphen();
      next += 1;
      left = check(sum(left, readProduct(), isSign(sign, '-') ? -1 : 1, reckoning), sign);
    }
    return left;
  }

  function readProduct(): Amount {
    let left = readSigned();
    while (isSign(peek(), '*', '/')) {
      const sign = peek();
      next += 1;
      left = check((isSign(sign, '*') ? product : quotient)(left, readSigned(), reckoning), sign);
    }
    return left;
  }

  function readSigned(): Amount {
    if (!isSign(peek(), '+', '-')) return readItem();
    const minus = isSign(peek(), '-');
    next += 1;
    const amount = deeper(readSigned);
    return minus ? negative(amount) : amount;
  }

  function readItem(): Amount {
    const token = peek();
    if (isSign(token, '(')) return readGroup();
    if (token.kind === 'number' || token.kind === 'part') return readWritten();
    return refuse(`expected a number${gotText(token)}`, token);
  }

  function readGroup(): Amount {
    next += 1;
    const amount = deeper(readSum);
    if (!isSign(peek(), ')')) refuse(`expected ) or one of + − × ÷${gotText(peek())}`, peek());
    next += 1;
    const token = peek();
    if (token.kind !== 'unit') return amount.kind === 'measure' ? { ...amount, literal: false } : amount;
    if (amount.kind !== 'bare') refuse('expected no second unit after the brackets', token);
    next += 1;
    return { kind: 'measure', amount: amount.amount, unit: token.unit, literal: true };
  }

  /** A number, its unit, and smaller units of the same family after it: `1′ 6 1/2″`. */
  function readWritten(): Amount {
    const amount = readMixed();
    const token = peek();
    if (token.kind !== 'unit') return { kind: 'bare', amount };
    next += 1;
    let unit = token.unit;
    let whole = inBase(amount, unit);
    let compound = false;
    while (peek().kind === 'number' || peek().kind === 'part') {
      const from = peek();
      const more = readFraction() ?? readMixed();
      unit = readSmallerUnit(unit, from);
      whole += inBase(more, unit);
      compound = true;
    }
    return compound
      ? { kind: 'measure', amount: whole, unit: reckoning.base, literal: false }
      : { kind: 'measure', amount, unit, literal: true };
  }

  function readSmallerUnit(above: EntryUnit, from: Token): EntryUnit {
    const token = peek();
    if (token.kind !== 'unit') {
      const inches = inchesBelow(above);
      return inches ?? refuse('expected one of + − × ÷ before this number, or a unit after it', from);
    }
    if (token.unit.family === undefined || token.unit.family !== above.family || token.unit.factor >= above.factor) {
      refuse(`expected a smaller unit that goes with ${above.names[0]}, or one of + − × ÷ before the number`, token);
    }
    next += 1;
    return token.unit;
  }

  /** A number after feet can only be inches: `5′ 6`. */
  const inchesBelow = (above: EntryUnit): EntryUnit | null => (above.names[0] === 'ft' ? inches : null);

  /** Whole and fraction, `18 3/4` or `18½`, or a number alone. */
  function readMixed(): number {
    const token = peek();
    if (token.kind === 'part') {
      next += 1;
      return token.value;
    }
    if (token.kind !== 'number') return refuse(`expected a number${gotText(token)}`, token);
    next += 1;
    const following = peek();
    if (!token.plain) return token.value;
    if (following.kind === 'part') {
      next += 1;
      return token.value + following.value;
    }
    if (following.kind !== 'number' || following.tight) return token.value;
    const fraction = readFraction();
    if (fraction === null) return token.value;
    const short = following.to - following.from <= NUMERATOR_DIGITS;
    if (fraction >= 1 || !short) refuse('expected a fraction under 1 after a whole number, as in 18 3/4', following);
    return token.value + fraction;
  }

  /** `3/4` without a space; null where there is none. */
  function readFraction(): number | null {
    const fraction = fractionAt(0);
    if (fraction !== null) next += 3;
    return fraction;
  }

  function fractionAt(ahead: number): number | null {
    const [over, stroke, under] = [peek(ahead), peek(ahead + 1), peek(ahead + 2)];
    if (over.kind !== 'number' || under.kind !== 'number' || !isSign(stroke, '/')) return null;
    if (!over.plain || !under.plain || !stroke.tight || !under.tight) return null;
    return under.value === 0 ? refuse('expected a number other than 0 to divide by', under) : over.value / under.value;
  }

  /** In the trade `1′-6″` and `18-3/4` are added up; as arithmetic they are taken away. Neither is guessed. */
  function refuseJoiningHyphen(): void {
    const [before, hyphen, after] = [peek(-1), peek(), peek(1)];
    if (hyphen.kind !== 'sign' || !hyphen.keyboard || !hyphen.tight || !after.tight) return;
    if (after.kind !== 'number' && after.kind !== 'part') return;
    const feet = before.kind === 'unit' && before.unit.names[0] === 'ft';
    const denominator = peek(3);
    const onRule =
      after.kind === 'part' ||
      ((fractionAt(1) ?? 1) < 1 && denominator.kind === 'number' && RULE_MARKS.includes(denominator.value));
    const wholeInches = before.kind === 'number' && before.plain && onRule;
    if (feet || wholeInches) {
      refuse('expected a space in place of this hyphen to add, or spaces round it to take away', hyphen);
    }
  }

  const inches = reckoning.units.find(({ names: [name] }) => name === 'in') ?? null;

  function gotText(token: Token): string {
    if (token.kind === 'end') return next === 0 ? ', got nothing' : ', got nothing more';
    return token.kind === 'unit' ? ` before ${token.unit.names[0]}` : '';
  }

  const amount = readSum();
  const rest = peek();
  if (rest.kind === 'end') return amount;
  if (isSign(rest, ')')) refuse('expected a ( before this )', rest);
  if (rest.kind === 'unit') refuse(`expected one unit after a number, ${unitList(reckoning.quantity)}`, rest);
  return refuse('expected one of + − × ÷ before this', rest);
}
