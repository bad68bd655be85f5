import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, polygonPath } from '$lib/geometry/contour.ts';
import { primitivesBox, type Primitive } from '$lib/drawing/primitive.ts';
import { MARGIN, papers } from '$lib/files/paper.ts';
import type { PdfPage } from '$lib/files/pdf/content.ts';
import { templatePages } from '$lib/files/templatePages.ts';
import { templatePdf } from '$lib/files/templatePdf.ts';
import { MOST_PAGES, OVERLAP, pagesOf, squareOn, stepOf, tileName, tilingOf, type Tiling } from '$lib/files/tiling.ts';
import type { Plate } from '$lib/files/plate.ts';
import { textWidth } from '$lib/drawing/dimensionStyle.ts';
import { textLength } from '$lib/files/pdf/pageFont.ts';
import { faultLine } from '$lib/project/fault.ts';
import { everything } from './plate.ts';
import { readPdf } from './readPdf.ts';
import { runs } from '../runs.ts';

const plate = (width: number, height: number, name = 'test part'): Plate => ({
  name,
  width,
  height,
  layers: {
    outside: [polygonPath([[0, 0], [width, 0], [width, height], [0, height]])], // prettier-ignore
    inside: [circle([width / 2, height / 2], Math.min(width, height) / 4)],
    engrave: [],
  },
});

const side = fc.double({ min: 1, max: 1500, noNaN: true });
const paper = fc.constantFrom('A4' as const, 'Letter' as const);

function tiled(width: number, height: number, on: 'A4' | 'Letter' = 'A4'): Tiling {
  const tiling = tilingOf('test part', { width, height }, on);
  if (!tiling.ok) throw new Error(tiling.faults.map(faultLine).join('; '));
  return tiling.value;
}

describe('tiles', () => {
  it('show the whole drawing, overlap by 10 mm and leave the margins white', () => {
    fc.assert(
      fc.property(side, side, paper, (width, height, on) => {
        const result = tilingOf('test part', { width, height }, on);
        if (!result.ok) return;
        const tiling = result.value;
        const { frame, page, columns, rows, origin } = tiling;
        const step = stepOf(tiling);
        expect(frame.width - step.width).toBeCloseTo(OVERLAP, 9);
        expect(frame.height - step.height).toBeCloseTo(OVERLAP, 9);
        expect(frame.width).toBeLessThanOrEqual(page.width - 2 * MARGIN);
        expect(frame.height).toBeLessThanOrEqual(page.height - 2 * MARGIN);
        for (const [at, size, whole] of [
          [origin[0], width, (columns - 1) * step.width + frame.width],
          [origin[1], height, (rows - 1) * step.height + frame.height],
        ] as const) {
          expect(at).toBeGreaterThan(0.5);
          expect(at + size).toBeLessThan(whole - 0.5);
        }
        expect([...Object.values(papers[on])].sort()).toEqual([page.width, page.height].sort());
      }),
    );
  });

  it('keep the square to measure clear of the drawing', () => {
    fc.assert(
      fc.property(side, side, paper, (width, height, on) => {
        const result = tilingOf('test part', { width, height }, on);
        if (!result.ok || result.value.square === null) return;
        const { square, origin, frame } = result.value;
        const [right, top] = [origin[0] + width, origin[1] + height];
        expect(square[0] > right || square[1] > top).toBe(true);
        expect(square[0] + squareOn[on]).toBeLessThan(frame.width);
        expect(square[1] + squareOn[on]).toBeLessThan(frame.height);
      }),
    );
  });

  it('are as few as the paper, held either way, allows', () => {
    // One slice of a desk stand lies on one page with the square beside it.
    expect(tiled(206, 65)).toMatchObject({ columns: 1, rows: 1, page: { width: 297, height: 210 } });
    expect(pagesOf(tiled(206, 65))).toBe(1);
    expect(tiled(100, 100)).toMatchObject({ page: { width: 210, height: 297 } });
    expect(tiled(180, 250)).toMatchObject({ columns: 1, rows: 1, square: null });
    expect(pagesOf(tiled(180, 250))).toBe(2);
    expect(tiled(190 + 180 - 8, 100)).toMatchObject({ columns: 2, rows: 1 });
    expect(tiled(600, 400).columns * tiled(600, 400).rows).toBe(8);
  });

  it('are refused over a hundred pages, with the numbers', () => {
    expect(tilingOf('plank', { width: 5000, height: 4200 }, 'Letter')).toEqual({
      ok: false,
      faults: [
        {
          pointer: '',
          message: `expected a template of at most ${MOST_PAGES} pages, got 487 of Letter for "plank": mark it out by its numbers, or cut it from its DXF`,
        },
      ],
    });
    expect(tilingOf('plank', { width: Infinity, height: 1 }, 'A4').ok).toBe(false);
  });

  it('are named as spreadsheets name cells', () => {
    const names = [0, 1, 25, 26, 27, 51, 52, 701, 702].map((column) => tileName(column, 0));
    expect(names).toEqual(['A1', 'B1', 'Z1', 'AA1', 'AB1', 'AZ1', 'BA1', 'ZZ1', 'AAA1']);
    expect(tileName(1, 4)).toBe('B5');
  });
});

/** Extents of what is drawn on a page within its frame, whatever it is. */
const boxes = ({ within }: PdfPage, dx = 0, dy = 0): string[] =>
  (within?.primitives ?? []).map((one) => box(one, dx, dy));

function box(primitive: Primitive, dx = 0, dy = 0): string {
  const [left, top, right, bottom] = primitivesBox([primitive]);
  return [left + dx, top + dy, right + dx, bottom + dy].map((value) => value.toFixed(6)).join(' ');
}

/** Whether it is as wide and as high as that, from the middle of its lines. */
function isSquare(primitive: Primitive, side: number): boolean {
  if (primitive.kind !== 'line') return false;
  const [left, top, right, bottom] = primitivesBox([{ ...primitive, width: 0 }]);
  return Math.abs(right - left - side) < 1e-9 && Math.abs(bottom - top - side) < 1e-9;
}

describe('pages of a template', () => {
  const big = plate(500, 380, 'bench top');
  const tiling = tiled(500, 380);
  const [cover, ...tiles] = templatePages(big, tiling, 'mm');

  it('come after a page with a square of 100 mm where there is no room for it', () => {
    expect(tiles).toHaveLength(tiling.columns * tiling.rows);
    const squares = (cover?.primitives ?? []).filter((one) => isSquare(one, 100));
    expect(squares).toHaveLength(1);
  });

  it('have a square of 4 inches on Letter, and say so', () => {
    const [page] = templatePages(plate(60, 40), tiled(60, 40, 'Letter'), 'in');
    const squares = (page?.primitives ?? []).filter((one) => isSquare(one, 101.6));
    expect(squares).toHaveLength(1);
  });

  it('show the part and the join marks at the same place on both sides of every join', () => {
    const step = stepOf(tiling);
    for (let row = 0; row < tiling.rows; row += 1) {
      for (let column = 0; column + 1 < tiling.columns; column += 1) {
        const left = tiles[row * tiling.columns + column];
        const right = tiles[row * tiling.columns + column + 1];
        if (!left || !right) throw new Error('a page is missing');
        const same = boxes(left).filter((one) => boxes(right, step.width, 0).includes(one));
        // Three strokes to a ringed cross, two crosses to a join, the dashed line, and the names.
        expect(same.length).toBeGreaterThanOrEqual(7);
        const strip = MARGIN + tiling.frame.width - OVERLAP / 2;
        const crosses = same
          .map((one) => one.split(' ').map(Number))
          .filter(([a = 0, , b = 0]) => Math.abs((a + b) / 2 - strip) < 1e-6);
        expect(crosses.length).toBeGreaterThanOrEqual(7);
      }
    }
    const [above, below] = [tiles[0], tiles[tiling.columns]];
    if (!above || !below) throw new Error('a page is missing');
    const same = boxes(above).filter((one) => boxes(below, 0, step.height).includes(one));
    expect(same.length).toBeGreaterThanOrEqual(7);
  });

  it('draw nothing outside the margins, whatever the name', () => {
    fc.assert(
      fc.property(
        side,
        side,
        paper,
        fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }),
        (width, height, on, name) => {
          const result = tilingOf(name, { width, height }, on);
          if (!result.ok || pagesOf(result.value) > 12) return;
          for (const page of templatePages(plate(width, height, name), result.value, 'mm')) {
            // Room for texts is reckoned by the drawing's own letters, wider than those that are set.
            const texts = page.primitives.map((one) =>
              one.kind === 'text' && one.text !== ''
                ? { ...one, size: (one.size * textLength(one.text, 1)) / textWidth(one.text, { textSize: 1 }) }
                : one,
            );
            const [left, top, right, bottom] = primitivesBox(texts);
            expect(left).toBeGreaterThan(MARGIN - 1);
            expect(top).toBeGreaterThan(MARGIN - 1);
            expect(right).toBeLessThan(page.width - MARGIN + 1);
            expect(bottom).toBeLessThan(page.height - MARGIN + 1);
          }
        },
      ),
      { numRuns: runs(60) },
    );
  });
});

describe('a PDF template', () => {
  const made = (of: Plate): Uint8Array => {
    const result = templatePdf(of, 'A4', 'mm');
    if (!result.ok) throw new Error(result.faults.map(faultLine).join('; '));
    return result.value;
  };

  it('is of A4, one page for a small part, and asks not to be scaled', () => {
    const text = Buffer.from(made(everything)).toString('latin1');
    // ISO 216 in PDF's unit: 210 mm = 595.28 pt, 297 mm = 841.89 pt.
    expect(text.match(/\/MediaBox \[[^\]]*\]/g)).toEqual([
      expect.stringMatching(/^\/MediaBox \[0 0 595\.2\d* 841\.\d+\]$/),
    ]);
    expect(text).toContain('/PrintScaling /None');
    expect(text).toContain("/CreationDate (D:19800101000000+00'00')");
  });

  it('draws the square 283.4646 pt wide and the part at full size', () => {
    // One point is 1/72 inch: 100 mm = 100 · 72 / 25.4 pt. The reader counts in points and gives them in mm.
    const [page] = readPdf(made(plate(60, 40))).pages;
    const isSize = (width: number, height: number) =>
      page?.paths.some(({ points, closed }) => {
        const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
        const [across, up] = [xs, ys].map((values) => Math.max(...values) - Math.min(...values));
        return closed && Math.abs((across ?? NaN) - width) < 4e-5 && Math.abs((up ?? NaN) - height) < 4e-5;
      });
    expect(isSize(100, 100)).toBe(true);
    expect(isSize(60, 40)).toBe(true);
  });

  it('says what it is, how large it must be and where it goes, in text that can be found', () => {
    const pages = readPdf(made(plate(400, 300, 'Größe ½'))).pages.map(({ texts }) => texts.map(({ text }) => text));
    // A4 lying: 297 and 210 mm less margins of 10 mm all round and 12 mm for these words.
    expect(pages[0]?.slice(0, 2)).toEqual(['Größe ½', expect.stringMatching(/^Join A1 to /)]);
    expect(pages[1]?.slice(0, 3)).toEqual([
      'A1',
      'Größe ½',
      'Print at 100 %. This frame must measure 277 mm × 178 mm.',
    ]);
    expect(pages[1]).toContain('A1–B1');
  });

  it('holds numbers without exponents, and the same bytes every time', () => {
    const drawings = readPdf(made(plate(400, 300))).pages.map(({ content }) => content);
    expect(drawings).toHaveLength(pagesOf(tiled(400, 300)));
    for (const drawing of drawings) expect(drawing).not.toMatch(/NaN|Infinity|undefined|\de[-+]?\d/);
    const [one, again] = [made(plate(400, 300)), made(plate(400, 300))];
    expect(Buffer.from(one).equals(Buffer.from(again))).toBe(true);
    const other = Buffer.from(made(plate(400, 300.5))).toString('latin1');
    const id = /\/ID \[<(\w{32})> <\1>\]/;
    expect(id.exec(Buffer.from(one).toString('latin1'))?.[1]).not.toBe(id.exec(other)?.[1]);
  });

  it('takes any name, and keeps it out of the structure', () => {
    const hostile = ') >> endobj 1 0 obj << /JavaScript (app.alert(1)) \\';
    const text = Buffer.from(made(plate(60, 40, hostile))).toString('latin1');
    expect(text).toContain('/Title (\\) >> endobj 1 0 obj << /JavaScript \\(app.alert\\(1\\)\\) \\\\)');
    for (const name of ['Keil Ω 漢字', '😀', '\u2028)', 'ab'.repeat(100)]) {
      expect(made(plate(60, 40, name)).length).toBeGreaterThan(1000);
    }
  });

  it('refuses what has no place on paper', () => {
    const bad = { ...everything, layers: { ...everything.layers, engrave: [circle([NaN, 0], 1)] } };
    expect(() => templatePdf(bad, 'A4', 'mm')).toThrow(/^Left & right <wedge>: expected a finite number .* got NaN/);
    expect(templatePdf(plate(6000, 6000), 'A4', 'mm')).toMatchObject({ ok: false });
  });
});
