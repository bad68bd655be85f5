import { letteringWidth } from '$lib/workshop/lettering.ts';

/** The text in lines no longer than `most` mm at a letter height; a word that is longer has a line of its own. */
export function wrapped(text: string, height: number, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && letteringWidth(longer, height) > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}
