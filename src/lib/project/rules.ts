import * as v from 'valibot';
import { got } from './got.ts';
import { LONGEST_TEXT } from './limits.ts';
import { expectation, type Range } from './range.ts';

/**
 * Schema pieces that all say the same thing in the same words: what was expected here, and what was found. Built on
 * valibot; the words live here so that page, command and files read alike.
 */

interface Seen {
  readonly input: unknown;
}

/** What each schema expects, in words, for the message about a missing key. */
const phrases = new WeakMap<object, string>();

function known<Schema extends object>(schema: Schema, phrase: string): Schema {
  phrases.set(schema, phrase);
  return schema;
}

const phraseOf = (schema: object | undefined): string => (schema && phrases.get(schema)) ?? 'a value';

const say = (phrase: string) => (issue: Seen) => `expected ${phrase}, got ${got(issue.input)}`;

/** A finite number in its range; the reason says why it ends where it does. */
export function quantity(range: Range & { readonly reason: string }): v.GenericSchema<number> {
  const message = (issue: Seen): string => `expected ${expectation(range, issue.input)}, got ${got(issue.input)}`;
  const phrase = expectation(range, undefined);
  const bounded = v.pipe(
    v.number(message),
    v.minValue(range.min, message),
    v.maxValue(range.max, message),
    v.description(`${phrase}: ${range.reason}`),
  );
  return known(range.whole ? v.pipe(bounded, v.integer(message)) : bounded, phrase);
}

/** Control characters and line separators break drawings and tables; a name is one line. */
const BREAKS_A_LINE = /[\p{Cc}\u2028\u2029]/u;

/** One line of text with something in it. */
export function name(): v.GenericSchema<string> {
  const phrase = `one line of 1 to ${LONGEST_TEXT} characters`;
  return known(
    v.pipe(
      v.string(say(phrase)),
      v.minLength(1, say(phrase)),
      v.maxLength(LONGEST_TEXT, say(phrase)),
      // An empty one is told by its length alone, not twice.
      v.check((text) => text === '' || (text.trim() !== '' && !BREAKS_A_LINE.test(text)), say(phrase)),
    ),
    phrase,
  );
}

/** A colour as `#rrggbb`, hexadecimal. */
export function colour(): v.GenericSchema<string> {
  const phrase = 'a colour as # and six hexadecimal digits';
  return known(v.pipe(v.string(say(phrase)), v.regex(/^#[0-9a-fA-F]{6}$/, say(phrase))), phrase);
}

export function flag(): v.GenericSchema<boolean> {
  return known(v.boolean(say('true or false')), 'true or false');
}

/** One of a few words. */
export function word<const Word extends string>(words: readonly Word[]): v.GenericSchema<Word> {
  const phrase = alternatives(words);
  return known(v.picklist(words, say(phrase)), phrase);
}

/** One of a few numbers. */
export function numberOf<const Numbers extends readonly [number, ...number[]]>(
  numbers: Numbers,
): v.GenericSchema<Numbers[number]> {
  const phrase = numbers.join(' or ');
  return known(v.picklist(numbers, say(phrase)), phrase);
}

/** Exactly this value. */
export function exactly<const Value extends string | number>(value: Value): v.GenericSchema<Value> {
  const phrase = JSON.stringify(value);
  return known(v.literal(value, say(phrase)), phrase);
}

const alternatives = (words: readonly string[]): string => words.map((one) => `"${one}"`).join(' or ');

/** The value, or null for none. */
export function orNull<Input, Output>(schema: v.GenericSchema<Input, Output>) {
  return known(v.nullable(schema), `${phraseOf(schema)} or null`);
}

/** A list of so many entries. */
export function list<Input, Output>(what: string, schema: v.GenericSchema<Input, Output>, least: number, most: number) {
  const phrase = `a list of ${least} to ${most} ${what}`;
  return known(
    v.pipe(v.array(schema, say(phrase)), v.minLength(least, say(phrase)), v.maxLength(most, say(phrase))),
    phrase,
  );
}

/** Two names. */
export function pair(what: string) {
  const phrase = `a list of two ${what}`;
  return known(v.strictTuple([name(), name()], say(phrase)), phrase);
}

/** An object with these keys and no others. */
export function record<const Entries extends v.ObjectEntries>(entries: Entries) {
  return known(
    v.strictObject(entries, (issue) => {
      const key = issue.path?.at(-1)?.key;
      if (issue.expected === 'never') return `unknown key, expected one of ${Object.keys(entries).join(', ')}`;
      if (issue.received === 'undefined' && typeof key === 'string' && Object.hasOwn(entries, key)) {
        return `expected ${phraseOf(entries[key])}, got nothing`;
      }
      return `expected an object, got ${got(issue.input)}`;
    }),
    'an object',
  );
}

/** One of several objects told apart by the word under a key of theirs, each with keys of its own. */
export function oneKindOf<const Key extends string, const Options extends v.VariantOptions<Key>>(
  key: Key,
  words: readonly string[],
  options: Options,
) {
  const phrase = alternatives(words);
  return known(
    v.variant(key, options, (issue) => {
      const last = issue.path?.at(-1);
      return last?.key === key
        ? `expected ${phrase}, got ${got(last.value)}`
        : `expected an object with a ${key}, got ${got(issue.input)}`;
    }),
    `an object with a ${key}`,
  );
}
