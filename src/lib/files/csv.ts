import { fixed } from './number.ts';

/** A number with so many decimals, or text. Text may be a user's: it never becomes a formula. */
export type Cell = string | { readonly value: number; readonly decimals: number };

/**
 * A byte order mark: without it, spreadsheets in wide use take a CSV file for one in the system's old code page and spoil
 * every letter beyond ASCII (common practice, no source). Readers of RFC 4180 that know UTF-8 skip it.
 */
const UTF8_MARK = '\ufeff';

/** What makes a spreadsheet read a cell as a formula, in both widths; also behind white space or quotes. */
const FORMULA = '[\\s"\'\\p{Cf}]*[=+\\-@＝＋－＠]';
const STARTS = new RegExp(`^(?:[\\t\\r\\n]|${FORMULA})`, 'u');

/** A formula behind what a reader set to other separators would take for the end of a cell. */
const STARTS_WITHIN = new RegExp(`[;|\\t\\r\\n](?=${FORMULA})`, 'gu');

/** What spreadsheets read as "text follows". */
const TEXT = "'";

/**
 * A table as CSV by RFC 4180: comma, CRLF, quotes where needed; UTF-8 with its mark. Numbers have a point and fixed
 * decimals; negative ones stay numbers.
 *
 * @throws RangeError naming the column when a number is not finite, or when a row has more or fewer cells than columns.
 */
export function csvFile(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const lines = rows.map((row, i) => {
    if (row.length !== columns.length) {
      throw new RangeError(`row ${i + 1}: expected ${columns.length} cells, got ${row.length}`);
    }
    return row.map((cell, column) => (typeof cell === 'string' ? quoted(cell) : number(cell, columns[column] ?? '')));
  });
  return UTF8_MARK + [columns.map(quoted), ...lines].map((line) => `${line.join(',')}\r\n`).join('');
}

function quoted(text: string): string {
  const within = text.replace(STARTS_WITHIN, (separator) => separator + TEXT);
  const safe = STARTS.test(text) ? TEXT + within : within;
  return /[",;\r\n\t]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function number({ value, decimals }: Exclude<Cell, string>, column: string): string {
  const rounded = Number(fixed(value, column, decimals));
  return rounded.toFixed(decimals);
}
