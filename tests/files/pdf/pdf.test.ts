import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Primitive } from '$lib/drawing/primitive.ts';
import { readOutline, writeOutline } from '$lib/files/pdf/outline.ts';
import { EM, fontTable, lettersIn, textLength } from '$lib/files/pdf/pageFont.ts';
import { pdfFile } from '$lib/files/pdf/pdf.ts';
import { fontSubset } from '$lib/files/pdf/subset.ts';
import { words, wrapped } from '$lib/files/pdf/words.ts';
import { canLetter } from '$lib/workshop/lettering/lettering.ts';
import { numberFrom } from '../../numbers.ts';
import { readPdf } from '../readPdf.ts';

const page = (...primitives: Primitive[]) => ({ width: 210, height: 297, primitives, within: null });
const written = (...primitives: Primitive[]) => readPdf(pdfFile('sheet', [page(...primitives)]));
const line = (text: string, more: Partial<Primitive & { kind: 'text' }> = {}): Primitive => ({
  kind: 'text',
  text,
  at: [20, 30],
  anchor: 'start',
  size: 4,
  ...more,
});

/** The characters of the page's font, by its own map of them: format 4 of OpenType's `cmap`, read once more. */
function fontCharacters(): string[] {
  const cmap = new DataView(fontTable('cmap').slice().buffer);
  const start = cmap.getUint32(8);
  const count = cmap.getUint16(start + 6) / 2;
  const [ends, begins, deltas, offsets] = [14, 16 + 2 * count, 16 + 4 * count, 16 + 6 * count].map((at) => start + at);
  const at = (table = 0, i = 0): number => cmap.getUint16(table + 2 * i);
  return Array.from({ length: count }, (_, i) => i).flatMap((i) => {
    const codes = Array.from({ length: at(ends, i) - at(begins, i) + 1 }, (_, k) => at(begins, i) + k);
    const glyph = (code: number): number => {
      if (at(offsets, i) === 0) return code + at(deltas, i);
      const listed = at((offsets ?? 0) + 2 * i + at(offsets, i), code - at(begins, i));
      return listed === 0 ? 0 : listed + at(deltas, i);
    };
    return codes
      .filter((code) => code >= 0x20 && code < 0xffff && (glyph(code) & 0xffff) !== 0)
      .map((code) => String.fromCharCode(code));
  });
}

describe('the text of a PDF', () => {
  test('is found as it was written, accents, signs and all', () => {
    const text = 'Größe, façade, naïve, Žižkov, Łódź, şi ≈ ½ ° µ − × “ ” ⌀ ≤ ± → № x̂';
    const [read] = written(line(text)).pages[0]?.texts ?? [];
    expect(read?.text).toBe(text.normalize('NFC'));
  });

  test('is found by plain spaces, however wide they are set', () => {
    expect(written(line('18\u202fmm of\u00a0ply')).pages[0]?.texts[0]?.text).toBe('18 mm of ply');
  });

  test('of any letters is all there, and what is no text is one replacement character', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 60 }), (text) => {
        const read = written(line(text)).pages[0]?.texts[0]?.text;
        const told = text
          .normalize('NFC')
          .replace(/\p{Zs}/gu, ' ')
          .replace(/[\p{Cc}\p{Cs}]/gu, '\ufffd');
        expect(read).toBe(told);
      }),
    );
    expect(written(line('a\ud800b')).pages[0]?.texts[0]?.text).toBe('a\ufffdb');
  });

  test('stands where it was put: start, middle and end, level and turned, in its size', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('start', 'middle', 'end'),
        numberFrom(-180, 180),
        numberFrom(2, 9),
        (anchor, turn, size) => {
          const [read] = written(line('Miß 12″', { anchor, turn, size })).pages[0]?.texts ?? [];
          const back = { start: 0, middle: 0.5, end: 1 }[anchor] * textLength('Miß 12″', size);
          const angle = (turn * Math.PI) / 180;
          expect(read?.x).toBeCloseTo(20 - back * Math.cos(angle), 3);
          expect(read?.y).toBeCloseTo(30 - back * Math.sin(angle), 3);
          expect(read?.size).toBeCloseTo(size, 3);
          // PDF counts with y up.
          expect(Math.cos(((read?.turn ?? NaN) * Math.PI) / 180 + angle)).toBeCloseTo(1, 6);
        },
      ),
    );
  });
});

describe('the font of a PDF', () => {
  const { font, characters } = written(line('Wedge, ½ ≈ ö ⌀ 漢'), line('Wedge again'));

  test('is named as a subset (ISO 32000-1, 9.6.4) and holds each letter once, as wide as it is set', () => {
    expect(font.name).toMatch(/^[A-Z]{6}\+B612$/);
    const letters = [...characters.values()];
    expect(new Set(letters).size).toBe(letters.length);
    expect(letters.join('')).toBe('Wedg, ½≈ö⌀漢ain');
    const metrics = new DataView(tableOf(font.file, 'hmtx').slice().buffer);
    letters.forEach((letter, i) => {
      const width = textLength(letter, 1000);
      expect(font.widths[i + 1]).toBeCloseTo(width, 3);
      expect((metrics.getUint16(4 * (i + 1)) * 1000) / EM).toBeCloseTo(width, 3);
    });
  });

  test('adds up as a TrueType font does (OpenType, table directory and head)', () => {
    const sum = (bytes: Uint8Array): number => {
      const whole = new Uint8Array(4 * Math.ceil(bytes.length / 4));
      whole.set(bytes);
      const view = new DataView(whole.buffer);
      let total = 0;
      for (let at = 0; at < whole.length; at += 4) total = (total + view.getUint32(at)) % 2 ** 32;
      return total;
    };
    expect(sum(font.file)).toBe(0xb1b0afba);
    const view = new DataView(font.file.slice().buffer);
    const tags = directory(font.file);
    expect([...tags.keys()]).toEqual(['glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp']);
    for (const [tag, { entry, offset, length }] of tags) {
      const table = font.file.slice(offset, offset + length);
      if (tag === 'head') table.fill(0, 8, 12);
      if (tag !== 'head') expect([tag, view.getUint32(entry + 4)]).toEqual([tag, sum(table)]);
      expect(offset % 4).toBe(0);
    }
    const loca = new DataView(tableOf(font.file, 'loca').slice().buffer);
    const places = Array.from({ length: loca.byteLength / 4 }, (_, i) => loca.getUint32(4 * i));
    expect(places).toHaveLength(characters.size + 2);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places.at(-1)).toBe(tableOf(font.file, 'glyf').length);
  });

  test('draws each letter within the box that the font itself states for it', () => {
    const [loca, glyf] = ['loca', 'glyf'].map((tag) => new DataView(fontTable(tag).slice().buffer));
    const cmap = fontCharacters();
    expect(cmap.length).toBeGreaterThan(200);
    const boxes = new Set(
      Array.from({ length: (loca?.byteLength ?? 0) / 2 - 1 }, (_, id) => {
        const [from, to] = [2 * (loca?.getUint16(2 * id) ?? 0), 2 * (loca?.getUint16(2 * id + 2) ?? 0)];
        return from === to ? '' : [2, 4, 6, 8].map((at) => glyf?.getInt16(from + at)).join(' ');
      }),
    );
    for (const letter of cmap) {
      const points = lettersIn(letter).flatMap(({ outline }) => outline.flat());
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
      const box =
        points.length === 0 ? '' : [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].join(' ');
      expect([letter, boxes.has(box)]).toEqual([letter, true]);
    }
  });

  test('has nothing that the engraving lacks, so that one list tells what cannot be shown', () => {
    // A soft hyphen is no letter: it is seen only where a line is broken, and none is.
    expect(fontCharacters().filter((letter) => letter !== '\u00ad' && !canLetter(letter))).toEqual([]);
  });

  test('keeps any outline as it is', () => {
    const point = fc.record({ x: fc.integer({ min: -3000, max: 3000 }), y: fc.integer({ min: -3000, max: 3000 }), on: fc.boolean() }); // prettier-ignore
    fc.assert(
      fc.property(
        fc.array(fc.array(point, { minLength: 1, maxLength: 12 }), { minLength: 1, maxLength: 5 }),
        (outline) => {
          const glyph = writeOutline(outline);
          expect(glyph.length % 4).toBe(0);
          expect(readOutline(glyph, () => new Uint8Array())).toEqual(outline);
        },
      ),
    );
  });

  test('of no letters is a font all the same', () => {
    expect(tableOf(fontSubset([]), 'loca')).toHaveLength(8);
    expect(written().pages[0]?.texts).toEqual([]);
  });
});

describe('lines and areas of a PDF', () => {
  const square = { kind: 'line', points: [[10, 20], [30, 20], [30, 40], [10, 40]], closed: true, width: 0.5 } as const; // prettier-ignore

  test('have the places, widths, dashes and tints of the page', () => {
    const dashed = { ...square, closed: false, width: 0.25, dashes: [3, 0.75], fill: 'stand' } as const;
    const [outline, open] = written(square, dashed).pages[0]?.paths ?? [];
    expect(outline).toMatchObject({ closed: true, dashes: [], fill: null, curves: 0 });
    expect(outline?.width).toBeCloseTo(0.5, 9);
    outline?.points.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(square.points[i]?.[0] ?? NaN, 5);
      expect(y).toBeCloseTo(square.points[i]?.[1] ?? NaN, 5);
    });
    expect(open).toMatchObject({ closed: false, dashes: [expect.closeTo(3, 9), expect.closeTo(0.75, 9)] });
    // #f6ecd8, as in the SVG.
    expect(open?.fill?.split(' ').map((share) => Math.round(Number(share) * 255))).toEqual([0xf6, 0xec, 0xd8]);
  });

  test('are hatched by a pattern, without a line where there is none', () => {
    const [hatched] = written({ ...square, width: 0, fill: 'hatch' }).pages[0]?.paths ?? [];
    expect(hatched).toMatchObject({ width: null, fill: '/H' });
  });

  test('bend as arcs do: a circle is never off by more than a ten-thousandth of its radius', () => {
    const [circle] = written({ kind: 'circle', centre: [60, 70], radius: 25, width: 0.25 }).pages[0]?.paths ?? [];
    expect(circle?.curves).toBe(8);
    for (const [x, y] of circle?.points ?? []) expect(Math.hypot(x - 60, y - 70)).toBeCloseTo(25, 4);
    // A half turn clockwise as seen on the paper, where y runs down.
    const [arc] = written({ kind: 'line', points: [[10, 50], [30, 50]], closed: false, width: 1, bulges: [1, 0] }).pages[0]?.paths ?? []; // prettier-ignore
    expect(arc?.points[2]?.[0]).toBeCloseTo(20, 4);
    expect(arc?.points[2]?.[1]).toBeCloseTo(40, 4);
  });

  test('a page that has no end is refused, and so is none', () => {
    expect(() => written({ ...square, points: [[Infinity, 0], [1, 1]] })).toThrow(/^sheet: expected a finite number/); // prettier-ignore
    expect(() => written(line('a', { at: [NaN, 0] }))).toThrow(/^sheet: expected a finite number/);
    expect(() => pdfFile('nothing', [])).toThrow('nothing: expected pages, got none');
  });
});

describe('words', () => {
  test('shrink where they would be too long, and are as high as they were asked to be else', () => {
    const place = { height: 3, x: 0, y: 0, anchor: 'start' } as const;
    const long = words('W'.repeat(200), place, 50);
    expect(textLength(long.text, long.size)).toBeCloseTo(50, 9);
    const tall = words('H', place, 50);
    // Capitals of the font are 1500 of its 2000 units high, as its own table says (OpenType, OS/2, sCapHeight).
    const capital = new DataView(fontTable('OS/2').slice().buffer).getInt16(88);
    expect((tall.size * capital) / EM).toBeCloseTo(3, 9);
  });

  test('lines are no longer than their room, and lose no word', () => {
    const text = 'Glue thinly, a few layers at a time, base down on a flat board; clamp across the width.';
    const lines = wrapped(text, 2.4, 60);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(' ')).toBe(text);
    for (const one of lines) expect(textLength(one, 2.4 / 0.75)).toBeLessThanOrEqual(60);
  });
});

/** Where a font's tables are (OpenType, table directory). */
function directory(font: Uint8Array): Map<string, { entry: number; offset: number; length: number }> {
  const view = new DataView(font.slice().buffer);
  return new Map(
    Array.from({ length: view.getUint16(4) }, (_, i) => {
      const entry = 12 + 16 * i;
      const tag = String.fromCharCode(...font.subarray(entry, entry + 4));
      return [tag, { entry, offset: view.getUint32(entry + 8), length: view.getUint32(entry + 12) }] as const;
    }),
  );
}

function tableOf(font: Uint8Array, tag: string): Uint8Array {
  const found = directory(font).get(tag);
  if (!found) throw new Error(`no table ${tag}`);
  return font.subarray(found.offset, found.offset + found.length);
}
