import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvFile } from '$lib/files/csv.ts';
import { readCsv } from './readCsv.ts';
import { runs } from '../runs.ts';

const MARK = '\ufeff';
/** Openings that spreadsheets read as formulas, after OWASP's page on CSV injection (from memory). */
const FORMULA = /^[\s"]*[=+\-@＝＋－＠]/;

const textOf = (cell: string): string => csvFile(['x'], [[cell]]);
const cellOf = (cell: string): string | undefined => readCsv(textOf(cell).slice(1))[1]?.[0];

describe('a CSV file', () => {
  it('is RFC 4180 with a mark that says UTF-8', () => {
    const text = csvFile(
      ['Part', 'Größe'],
      [
        ['a "b", c', { value: 3.05, decimals: 2 }],
        ['two\nlines', ''],
      ],
    );
    expect(text).toBe(`${MARK}Part,Größe\r\n"a ""b"", c",3.05\r\n"two\nlines",\r\n`);
  });

  it('reads back cell by cell, for any text', () => {
    const cell = fc.oneof(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[a",;\r\n =\t-]*$/));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
        const back = readCsv(csvFile(['one', 'two'], rows).slice(1)).slice(1);
        expect(back.map((row) => row.map((text) => text.replaceAll("'", '')))).toEqual(
          rows.map((row) => row.map((text) => text.replaceAll("'", ''))),
        );
      }),
    );
  });

  it('leaves ordinary text as it is', () => {
    for (const text of ['slice', 'MDF 3 mm', 'l-r', 'a = b', "maker's", '½ × 3', '漢字', '😀', 'a, b', 'a; b']) {
      expect(cellOf(text)).toBe(text);
    }
  });

  it.each([
    '=1+1',
    '+1',
    '-1',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    '＝1',
    ' =1',
    '"=1',
    "=cmd|' /C calc'!A0",
    '\u200b=1',
    '-',
    '\tx',
  ])('never lets %j be a formula', (text) => {
    expect(cellOf(text)?.startsWith("'")).toBe(true);
    expect(cellOf(text)?.replaceAll("'", '')).toBe(text.replaceAll("'", ''));
  });

  it('never lets any text be a formula, for readers with any of the usual separators', () => {
    const nasty = fc.stringMatching(/^[a=+\-@;|,\t "'\r\n＝]{0,12}$/);
    fc.assert(
      fc.property(nasty, nasty, (one, two) => {
        const text = csvFile(['x', 'y', 'z'], [['first', one, two]]).slice(1);
        for (const separator of [',', ';', '\t', '|']) {
          for (const cell of readCsv(text, separator).slice(1).flat()) {
            expect(cell).not.toMatch(FORMULA);
          }
        }
      }),
      { numRuns: runs(3000) },
    );
  });

  it('keeps numbers numbers, negative ones too, with fixed decimals and no exponent', () => {
    const row = [-3.5, -0.0001, 1e-9, 1234567.891, 7].map((value) => ({ value, decimals: 2 }));
    expect(csvFile(['a', 'b', 'c', 'd', 'e'], [row]).split('\r\n')[1]).toBe('-3.50,0.00,0.00,1234567.89,7.00');
    expect(csvFile(['n'], [[{ value: 4, decimals: 0 }]]).split('\r\n')[1]).toBe('4');
  });

  it('refuses what is no number, and rows of another length', () => {
    expect(() => csvFile(['Area'], [[{ value: NaN, decimals: 2 }]])).toThrow(
      'Area: expected a finite number of at most 15 digits, got NaN',
    );
    expect(() => csvFile(['Area'], [['a', 'b']])).toThrow('row 1: expected 1 cells, got 2');
  });
});
