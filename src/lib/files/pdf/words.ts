import type { TextPrimitive } from '$lib/drawing/primitive.ts';
import { CAPITAL, textLength } from './pageFont.ts';

/** Where a line of text goes, mm. */
export interface WordsPlace {
  /** Height of the capitals. */
  readonly height: number;
  /** The anchor, on the base line. */
  readonly x: number;
  readonly y: number;
  readonly anchor: TextPrimitive['anchor'];
}

/** A line of text, made smaller where it would be longer than `most` mm. */
export function words(text: string, { height, x, y, anchor }: WordsPlace, most: number): TextPrimitive {
  const asked = height / CAPITAL;
  const long = textLength(text, asked);
  return { kind: 'text', text, at: [x, y], anchor, size: long > most ? (asked * most) / long : asked };
}

/** The text in lines no longer than `most` mm at a height of its capitals; a word that is longer has a line of its own. */
export function wrapped(text: string, height: number, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textLength(longer, height / CAPITAL) > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}
