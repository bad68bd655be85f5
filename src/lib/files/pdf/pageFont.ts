import { unzlibSync } from 'fflate';
import file from '@fontsource/b612/files/b612-latin-400-normal.woff?inline';
import { findGlyph, lettersOf, replacementGlyph, SPACING } from '$lib/workshop/lettering/glyph.ts';
import { readOutline, type Outline } from './outline.ts';
import { penOutline } from './penOutline.ts';

/** The page's own lettering, for paper. Font units: so many make the height of the font. */
export const EM = 2000;
/** Height of capitals as a share of the font's. */
export const CAPITAL = 0.75;
export const FONT_NAME = 'B612';

/** A letter as it is set. */
export interface Letter {
  /** With its accents, as somebody finds and copies it. */
  readonly text: string;
  /** Font units. */
  readonly advance: number;
  readonly outline: Outline;
}

/** Tables of an sfnt font, by their tags. */
type Tables = ReadonlyMap<string, Uint8Array>;

/** A WOFF file (W3C, WOFF 1.0) keeps the tables one by one, deflated where that makes them shorter. */
function woffTables(bytes: Uint8Array): Tables {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return new Map(
    Array.from({ length: view.getUint16(12) }, (_, i) => {
      const at = 44 + 20 * i;
      const [offset, packed, length] = [view.getUint32(at + 4), view.getUint32(at + 8), view.getUint32(at + 12)];
      const table = bytes.subarray(offset, offset + packed);
      return [String.fromCharCode(...bytes.subarray(at, at + 4)), packed < length ? unzlibSync(table) : table] as const;
    }),
  );
}

interface Font {
  readonly tables: Tables;
  readonly characters: ReadonlyMap<string, number>;
}

let loaded: Font | null = null;

function font(): Font {
  if (loaded === null) {
    const bytes = Uint8Array.from(atob(file.slice(file.indexOf(',') + 1)), (character) => character.charCodeAt(0));
    const tables = woffTables(bytes);
    loaded = { tables, characters: charactersIn(viewOf(tables, 'cmap')) };
  }
  return loaded;
}

/** A table of the font. */
export const fontTable = (tag: string): Uint8Array => tableOf(font().tables, tag);

function tableOf(tables: Tables, tag: string): Uint8Array {
  const table = tables.get(tag);
  if (!table) throw new RangeError(`expected a font with the table ${tag}`);
  return table;
}

function viewOf(tables: Tables, tag: string): DataView {
  const { buffer, byteOffset, byteLength } = tableOf(tables, tag);
  return new DataView(buffer, byteOffset, byteLength);
}

/** What comes before the space is no text. */
const FIRST = 0x20;

/** Which glyph each character has: segments of the character map in format 4, which the font's first is. */
function charactersIn(view: DataView): ReadonlyMap<string, number> {
  const start = view.getUint32(8);
  if (view.getUint16(start) !== 4) throw new RangeError('expected a font with a character map of format 4');
  const double = view.getUint16(start + 6);
  const found = new Map<string, number>();
  for (let at = start + 14; at < start + 14 + double; at += 2) {
    const [last, first] = [view.getUint16(at), view.getUint16(at + double + 2)];
    const [delta, offset] = [view.getUint16(at + 2 * double + 2), view.getUint16(at + 3 * double + 2)];
    for (let code = first; code <= last && code < 0xffff; code += 1) {
      const given = offset === 0 ? code : view.getUint16(at + 3 * double + 2 + offset + 2 * (code - first));
      const id = offset !== 0 && given === 0 ? 0 : (given + delta) & 0xffff;
      if (id !== 0 && code >= FIRST) found.set(String.fromCharCode(code), id);
    }
  }
  return found;
}

function fontLetter(text: string): Letter | null {
  const { tables, characters } = font();
  const id = characters.get(text);
  if (id === undefined) return null;
  const [loca, glyf, hmtx, hhea] = ['loca', 'glyf', 'hmtx', 'hhea'].map((tag) => viewOf(tables, tag));
  if (!loca || !glyf || !hmtx || !hhea) return null;
  // Short offsets, halved, as the font's head says.
  const glyph = (of: number): Uint8Array =>
    tableOf(tables, 'glyf').subarray(2 * loca.getUint16(2 * of), 2 * loca.getUint16(2 * of + 2));
  const advance = hmtx.getUint16(4 * Math.min(id, hhea.getUint16(34) - 1));
  return { text, advance, outline: readOutline(glyph(id), glyph) };
}

/** Letters of the engraving are drawn in tenths of the capitals' height, with a pen a tenth of it wide. */
const TENTH = (CAPITAL * EM) / 10;
const PEN = 150;

/** What the font lacks is set in the letters of the engraving; what those lack as well is a crossed box. */
function penLetter(text: string): Letter {
  const { width, paths } = findGlyph(text) ?? replacementGlyph;
  const side = SPACING / 2;
  const moved = paths.map((path) => ({ ...path, vertices: path.vertices.map((v) => ({ ...v, x: v.x + side })) }));
  return { text, advance: Math.round((width + SPACING) * TENTH), outline: penOutline(moved, TENTH, PEN) };
}

const letters = new Map<string, Letter>();

/** The letters of a line of text, in their order. */
export const lettersIn = (text: string): Letter[] =>
  lettersOf(text).map((one) => {
    const letter = letters.get(one) ?? fontLetter(one) ?? penLetter(one);
    letters.set(one, letter);
    return letter;
  });

/** Length of a line of text at a height of the font, in the unit of that. */
export const textLength = (text: string, size: number): number =>
  (lettersIn(text).reduce((sum, { advance }) => sum + advance, 0) / EM) * size;
