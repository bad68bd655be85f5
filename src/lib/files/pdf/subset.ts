import { joined } from './joined.ts';
import { writeOutline } from './outline.ts';
import { fontTable, type Letter } from './pageFont.ts';

/** Of a whole font, as the table `head` wants it (OpenType, `head`). */
const CHECKSUM = 0xb1b0afba;

/**
 * A TrueType font of the letters alone, for a PDF that names glyphs by their numbers: the first letter is glyph 1, glyph 0 is
 * empty. Without hints and without a character map.
 */
export function fontSubset(letters: readonly Letter[]): Uint8Array {
  const glyphs = [new Uint8Array(0), ...letters.map(({ outline }) => writeOutline(outline))];
  let end = 0;
  const offsets = [0, ...glyphs.map(({ length }) => (end += length))];
  const outlines = letters.map(({ outline }) => outline);
  const tables: [string, Uint8Array][] = [
    ['glyf', joined(glyphs)],
    // Offsets in four bytes.
    ['head', changed('head', (view) => (view.setUint32(8, 0), view.setInt16(50, 1)))],
    ['hhea', changed('hhea', (view) => view.setUint16(34, glyphs.length))],
    ['hmtx', metrics(letters)],
    ['loca', numbers(offsets, 4)],
    ['maxp', changed('maxp', (view) => setMost(view, glyphs.length, outlines))],
  ];
  const font = sfnt(tables);
  const head = 12 + 16 * tables.length + padded(tables[0]?.[1].length ?? 0);
  new DataView(font.buffer).setUint32(head + 8, (CHECKSUM - sum(font)) >>> 0);
  return font;
}

/** A copy of a table of the font with some of its numbers set. */
function changed(tag: string, set: (view: DataView) => void): Uint8Array {
  const table = fontTable(tag).slice();
  set(new DataView(table.buffer));
  return table;
}

/** How many glyphs there are, and how many points and outlines one has at the most. */
function setMost(view: DataView, glyphs: number, outlines: readonly Letter['outline'][]): void {
  view.setUint16(4, glyphs);
  view.setUint16(6, Math.max(0, ...outlines.map((outline) => outline.flat().length)));
  view.setUint16(8, Math.max(0, ...outlines.map((outline) => outline.length)));
}

/** Advance and left edge of each glyph. */
const metrics = (letters: readonly Letter[]): Uint8Array =>
  numbers([0, 0, ...letters.flatMap(({ advance, outline }) => [advance, leftOf(outline.flat())])], 2);

const leftOf = (points: readonly { readonly x: number }[]): number =>
  points.length === 0 ? 0 : Math.min(...points.map(({ x }) => x));

function sfnt(tables: readonly (readonly [string, Uint8Array])[]): Uint8Array<ArrayBuffer> {
  const directory = 12 + 16 * tables.length;
  const font = new Uint8Array(tables.reduce((size, [, table]) => size + padded(table.length), directory));
  const view = new DataView(font.buffer);
  const power = Math.floor(Math.log2(tables.length));
  [0x0001, 0x0000, tables.length, 16 * 2 ** power, power, 16 * (tables.length - 2 ** power)].forEach((word, i) =>
    view.setUint16(2 * i, word),
  );
  let at = directory;
  tables.forEach(([tag, table], i) => {
    const entry = 12 + 16 * i;
    font.set(table, at);
    [...tag].forEach((character, place) => view.setUint8(entry + place, character.charCodeAt(0)));
    view.setUint32(entry + 4, sum(font.subarray(at, at + padded(table.length))));
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, table.length);
    at += padded(table.length);
  });
  return font;
}

const padded = (length: number): number => 4 * Math.ceil(length / 4);

/** Of the four-byte numbers, as tables are checked. */
function sum(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let total = 0;
  for (let at = 0; at < bytes.length; at += 4) total = (total + view.getUint32(at)) >>> 0;
  return total;
}

function numbers(values: readonly number[], size: 2 | 4): Uint8Array {
  const bytes = new Uint8Array(values.length * size);
  const view = new DataView(bytes.buffer);
  values.forEach((value, i) => (size === 2 ? view.setUint16(2 * i, value) : view.setUint32(4 * i, value)));
  return bytes;
}
