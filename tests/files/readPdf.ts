import { inflateSync } from 'node:zlib';

/** A PDF as the format's own rules read it (ISO 32000-1): objects by their places, texts by the font's table of characters. */

export interface ReadText {
  readonly text: string;
  /** Start of its base line from the page's upper left, mm. */
  readonly x: number;
  readonly y: number;
  /** Height of the font, mm. */
  readonly size: number;
  /** Degrees, counter-clockwise as PDF counts. */
  readonly turn: number;
}

export interface ReadPath {
  /** Points that it runs through, ends of curves among them, from the page's upper left, mm. */
  readonly points: readonly (readonly [number, number])[];
  readonly curves: number;
  readonly closed: boolean;
  /** mm; null where it has no line. */
  readonly width: number | null;
  readonly dashes: readonly number[];
  /** Red, green and blue, or the pattern's name; null for none. */
  readonly fill: string | null;
}

export interface ReadPage {
  /** mm. */
  readonly width: number;
  readonly height: number;
  readonly content: string;
  readonly texts: readonly ReadText[];
  readonly paths: readonly ReadPath[];
}

export interface ReadPdf {
  readonly trailer: string;
  readonly pages: readonly ReadPage[];
  /** The font's names, its file and its widths by glyph, thousandths of its height. */
  readonly font: { readonly name: string; readonly file: Uint8Array; readonly widths: readonly number[] };
  /** Texts by glyph, the first glyph 1. */
  readonly characters: ReadonlyMap<number, string>;
}

const POINT = 25.4 / 72;

interface Entry {
  readonly dictionary: string;
  readonly stream: Uint8Array | null;
}

export function readPdf(file: Uint8Array): ReadPdf {
  const text = Buffer.from(file).toString('latin1');
  if (!/^%PDF-1\.\d\n/.test(text) || !text.endsWith('%%EOF\n')) throw new Error('no PDF');
  const start = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(text)?.[1]);
  const table = /^xref\n0 (\d+)\n([\s\S]*?)trailer\n([\s\S]*?)\nstartxref/.exec(text.slice(start));
  if (!table) throw new Error('no table of objects where the file says');
  const [, count = '', places = '', trailer = ''] = table;
  const lines = places.match(/\d{10} \d{5} [fn] \n/g) ?? [];
  if (lines.length !== Number(count) || lines.join('') !== places) throw new Error('the table of objects is not whole');
  const objects = lines.map((line, number) =>
    number === 0 ? null : objectAt(text, Number(line.slice(0, 10)), number),
  );
  const get = (reference: string | undefined): Entry => {
    const found = objects[Number(/^(\d+) 0 R$/.exec(reference ?? '')?.[1])];
    if (!found) throw new Error(`no object ${reference}`);
    return found;
  };
  const refer = (dictionary: string, key: string): Entry =>
    get(new RegExp(`/${key} \\[?(\\d+ 0 R)`).exec(dictionary)?.[1]);
  const tree = refer(refer(trailer, 'Root').dictionary, 'Pages').dictionary;
  const kids = /\/Kids \[([^\]]*)\]/.exec(tree)?.[1]?.match(/\d+ 0 R/g) ?? [];
  const pages = kids.map((kid) => get(kid).dictionary);
  const type0 = refer(pages[0] ?? '', 'F').dictionary;
  const descendant = refer(type0, 'DescendantFonts').dictionary;
  const descriptor = refer(descendant, 'FontDescriptor').dictionary;
  const characters = charactersOf(new TextDecoder().decode(refer(type0, 'ToUnicode').stream ?? undefined));
  return {
    trailer,
    pages: pages.map((page) => readPage(page, refer(page, 'Contents').stream, characters)),
    font: {
      name: /\/FontName \/(\S+)/.exec(descriptor)?.[1] ?? '',
      file: refer(descriptor, 'FontFile2').stream ?? new Uint8Array(),
      widths: [0, ...(/\/W \[1 \[([^\]]*)\]\]/.exec(descendant)?.[1] ?? '').split(' ').map(Number)],
    },
    characters,
  };
}

function objectAt(text: string, place: number, number: number): Entry {
  const head = `${number} 0 obj\n`;
  if (!text.startsWith(head, place)) throw new Error(`object ${number} is not where the table says`);
  const from = place + head.length;
  const until = text.indexOf('\nendobj\n', from);
  const opening = text.indexOf('>>\nstream\n', from);
  if (opening < 0 || opening > until) return { dictionary: text.slice(from, until), stream: null };
  const dictionary = text.slice(from, opening + 2);
  const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1]);
  const begin = opening + '>>\nstream\n'.length;
  if (!text.startsWith('\nendstream\nendobj\n', begin + length))
    throw new Error(`object ${number} is not as long as it says`);
  return { dictionary, stream: new Uint8Array(inflateSync(Buffer.from(text.slice(begin, begin + length), 'latin1'))) };
}

function charactersOf(table: string): Map<number, string> {
  const blocks = [...table.matchAll(/(\d+) beginbfchar\n([\s\S]*?)\nendbfchar/g)];
  return new Map(
    blocks.flatMap(([, count, block = '']) => {
      const lines = block.split('\n');
      if (lines.length !== Number(count) || lines.length > 100) throw new Error('a block of the table is not whole');
      return lines.map((line) => {
        const [, glyph = '', text = ''] = /^<([\dA-F]{4})> <((?:[\dA-F]{4})+)>$/.exec(line) ?? [];
        const units = text.match(/.{4}/g) ?? [];
        return [parseInt(glyph, 16), String.fromCharCode(...units.map((unit) => parseInt(unit, 16)))] as const;
      });
    }),
  );
}

type Matrix = readonly [number, number, number, number, number, number];
const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];
const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + b * i,
  a * h + b * j,
  c * g + d * i,
  c * h + d * j,
  e * g + f * i + k,
  e * h + f * j + l,
];

interface State {
  readonly matrix: Matrix;
  readonly width: number;
  readonly dashes: readonly number[];
  readonly fill: string;
}

function readPage(page: string, stream: Uint8Array | null, characters: ReadonlyMap<number, string>): ReadPage {
  const [, , across = NaN, up = NaN] = (/\/MediaBox \[([^\]]*)\]/.exec(page)?.[1] ?? '').split(' ').map(Number);
  const content = Buffer.from(stream ?? []).toString('latin1');
  const texts: ReadText[] = [];
  const paths: ReadPath[] = [];
  const kept: State[] = [];
  let state: State = { matrix: IDENTITY, width: 1, dashes: [], fill: '0 0 0' };
  let textMatrix = IDENTITY;
  let [points, curves, closed]: [[number, number][], number, boolean] = [[], 0, false];
  const place = (x: number, y: number): [number, number] => {
    const [, , , , e, f] = times([1, 0, 0, 1, x, y], state.matrix);
    return [e * POINT, (up - f) * POINT];
  };
  const scale = (): number => Math.hypot(state.matrix[0], state.matrix[1]) * POINT;
  const paint = (stroked: boolean, filled: boolean): void => {
    const line = { width: stroked ? state.width * scale() : null, dashes: state.dashes.map((dash) => dash * scale()) };
    if (stroked || filled) paths.push({ points, curves, closed, ...line, fill: filled ? state.fill : null });
    [points, curves, closed] = [[], 0, false];
  };
  let operands: string[] = [];
  for (const [token] of content.matchAll(/\[[^\]]*\]|<[\dA-F]*>|[^\s\[\]<>]+/g)) {
    if (/^[-+.\d[</]/.test(token)) {
      operands.push(token);
      continue;
    }
    const [a = NaN, b = NaN, c = NaN, d = NaN, e = NaN, f = NaN] = operands.map(Number);
    const last = operands.at(-1) ?? '';
    if (token === 'q') kept.push(state);
    else if (token === 'Q') state = kept.pop() ?? state;
    else if (token === 'cm') state = { ...state, matrix: times([a, b, c, d, e, f], state.matrix) };
    else if (token === 'w') state = { ...state, width: a };
    else if (token === 'd')
      state = { ...state, dashes: (/\[(.*)\]/.exec(operands[0] ?? '')?.[1] ?? '').split(' ').filter(Boolean).map(Number) }; // prettier-ignore
    else if (token === 'rg') state = { ...state, fill: operands.join(' ') };
    else if (token === 'g') state = { ...state, fill: `${a} ${a} ${a}` };
    else if (token === 'scn') state = { ...state, fill: last };
    else if (token === 'm' || token === 'l') points.push(place(a, b));
    else if (token === 'c') [points, curves] = [[...points, place(e, f)], curves + 1];
    else if (token === 're') points = [place(a, b), place(a + c, b + d)];
    else if (token === 'h') closed = true;
    else if (token === 'S') paint(true, false);
    else if (token === 'f') paint(false, true);
    else if (token === 'B') paint(true, true);
    else if (token === 'n') paint(false, false);
    else if (token === 'Tm') textMatrix = [a, b, c, d, e, f];
    else if (token === 'Tj') texts.push(readText(last, times(textMatrix, state.matrix), up, characters));
    else if (!['W', 'J', 'j', 'Tf', 'BT', 'ET', 'cs'].includes(token)) throw new Error(`unknown command ${token}`);
    operands = [];
  }
  return { width: across * POINT, height: up * POINT, content, texts, paths };
}

function readText(codes: string, matrix: Matrix, up: number, characters: ReadonlyMap<number, string>): ReadText {
  const [a, b, , , e, f] = matrix;
  const glyphs = (codes.match(/[\dA-F]{4}/g) ?? []).map((code) => parseInt(code, 16));
  const text = glyphs.map((glyph) => characters.get(glyph) ?? '').join('');
  return {
    text,
    x: e * POINT,
    y: (up - f) * POINT,
    size: Math.hypot(a, b) * POINT,
    turn: (Math.atan2(b, a) * 180) / Math.PI,
  };
}
