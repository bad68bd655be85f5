/**
 * File names from user text. Letters and digits of every script stay: a maker's own words should be readable on the
 * maker's own disk, folding to ASCII would leave nothing of many scripts, and archives and file systems in use hold
 * Unicode. Everything else that any system, shell or archive could take for more than a name becomes a hyphen.
 */

/**
 * Longest stem, in UTF-16 units: with a number and an ending the whole name stays within 80. At 3 bytes of UTF-8 for
 * each unit at most, that is also under the 255 bytes that file systems allow.
 */
const LONGEST = 70;

/** Names that Windows keeps for devices, whatever follows their first point (from memory). */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A safe stem for a file name: never empty, 1 to 70 characters, no separators, controls or direction marks, no point
 * or space at either end, not a reserved device name. Compatibility forms are unified first (NFKC), so that a
 * full-width slash is seen for what it is.
 */
export function fileStem(text: string): string {
  const kept = text
    .normalize('NFKC')
    .replace(/\p{Cf}/gu, '')
    .replace(/[\p{Z}\s]+/gu, ' ')
    .replace(/[^\p{L}\p{M}\p{Nd} _.,+()-]+/gu, '-')
    .replace(/-{2,}/g, '-')
    .normalize('NFKC');
  const stem = trimmed(cut(trimmed(kept), LONGEST));
  if (stem === '') return 'unnamed';
  return RESERVED.test((stem.split('.')[0] ?? '').trim()) ? trimmed(cut(`_${stem}`, LONGEST)) : stem;
}

/** Safe stems for a set of texts, in their order, each unique also where a file system ignores case: `a`, `A 2`, `a 3`. */
export function fileStems(texts: readonly string[]): string[] {
  const taken = new Set<string>();
  return texts.map((text) => {
    const stem = fileStem(text);
    let name = stem;
    for (let number = 2; taken.has(folded(name)); number += 1) {
      const tail = ` ${number}`;
      name = `${trimmed(cut(stem, LONGEST - tail.length))}${tail}`;
    }
    taken.add(folded(name));
    return name;
  });
}

/** How a file system that ignores case and composition sees a name. */
export const folded = (name: string): string => name.normalize('NFKC').toUpperCase().toLowerCase();

/**
 * A leading hyphen would read as an option, a leading point hides the file, a leading accent joins whatever stands
 * before the name, Windows drops trailing points and spaces.
 */
const trimmed = (stem: string): string => stem.replace(/^[-.\s\p{M}]+/u, '').replace(/[-.\s]+$/, '');

/** The text cut to so many units, no character split. */
function cut(text: string, longest: number): string {
  let short = '';
  for (const character of text) {
    if (short.length + character.length > longest) break;
    short += character;
  }
  return short;
}
