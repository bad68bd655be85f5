import { fieldsOf, numberIn, type Commas, type Row, type Separator } from './columns.ts';

/** What the file says of its commas: told by the numbers, contradicted by them, or not told at all. */
export type CommasTold =
  | { readonly kind: 'told'; readonly commas: Commas }
  | { readonly kind: 'contradicted'; readonly decimal: Row; readonly thousands: Row }
  | { readonly kind: 'untold'; readonly row: Row; readonly field: string };

/** Three digits after one comma and one to three before it, no zero first: may be 1.234 or 1234. */
const EITHER = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/**
 * Whether commas in numbers are decimal ones or stand between thousands, told by the first rows that can tell: two commas in
 * one number, or one before a point, stand between thousands; one that is not before just three digits is decimal; a level
 * is never in thousands of decibels; where another number has a decimal point, commas are none. Else by the frequencies
 * that rise in one way of reading only.
 */
export function commasOf(rows: readonly Row[], separator: Separator): CommasTold {
  if (separator === 'comma') return { kind: 'told', commas: 'thousands' };
  let decimal: Row | null = null;
  let thousands: Row | null = null;
  let pointed = false;
  let either: { row: Row; field: string } | null = null;
  for (const row of rows) {
    for (const [column, field] of fieldsOf(row.text, separator).slice(0, 2).entries()) {
      const comma = field.indexOf(',');
      if (comma < 0) {
        if (field.includes('.')) pointed = true;
      } else if (field.indexOf(',', comma + 1) > 0 || field.includes('.', comma)) thousands ??= row;
      else if (column > 0 || !EITHER.test(field)) decimal ??= row;
      else either ??= { row, field };
    }
  }
  if (decimal && thousands) return { kind: 'contradicted', decimal, thousands };
  if (decimal) return { kind: 'told', commas: 'decimal' };
  if (thousands || pointed || either === null) return { kind: 'told', commas: 'thousands' };
  const rises = { decimal: isRising(rows, separator, true), thousands: isRising(rows, separator, false) };
  if (rises.decimal !== rises.thousands) return { kind: 'told', commas: rises.decimal ? 'decimal' : 'thousands' };
  return { kind: 'untold', ...either };
}

function isRising(rows: readonly Row[], separator: Separator, decimal: boolean): boolean {
  let last = -Infinity;
  for (const { text } of rows) {
    const frequency = numberIn(fieldsOf(text, separator)[0] ?? '', decimal);
    if (!(frequency > last)) return false;
    last = frequency;
  }
  return rows.length > 1;
}
