import { LONGEST_TEXT } from './limits.ts';

/** A name that ends in a number of its own: the copy of `window side 2` is `window side 3`. */
const NUMBERED = /^(.*\S) (\d{1,6})$/;

/**
 * The name itself where nothing has it yet, else the name with the lowest free number from 2 after it: `window side`,
 * `window side 2`. A long name is cut so that the number fits.
 */
export function freeName(name: string, taken: readonly string[]): string {
  const used = new Set(taken);
  if (!used.has(name)) return name;
  const [, stem = name, last = '1'] = NUMBERED.exec(name) ?? [];
  for (let number = Number(last) + 1; ; number += 1) {
    const tail = ` ${number}`;
    const next = `${cut(stem, LONGEST_TEXT - tail.length)}${tail}`;
    if (!used.has(next)) return next;
  }
}

/** The first so many UTF-16 units, no character split. */
const cut = (text: string, longest: number): string =>
  text.length <= longest
    ? text
    : text
        .slice(0, longest)
        .replace(/[\uD800-\uDBFF]$/, '')
        .trimEnd();
