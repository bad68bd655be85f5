/** What stands between two columns of a text. */
export type Separator = 'semicolon' | 'space' | 'comma';

/** What the commas in a text's numbers are. */
export type Commas = 'decimal' | 'thousands';

/** A line that begins with one of these is a comment, wherever it stands (common practice, no source). */
const COMMENT = /^(?:[*#;%!]|\/\/)/;

/** Begins with a number, or with a word that stands where a number should. */
const NUMERIC = /^[+-]?(?:[.,]?\d|(?:nan|inf|infinity)\b)/i;

/** A row of columns in words: its first field is a number, so it is no line of words. */
export interface Row {
  /** From 1. */
  readonly line: number;
  readonly text: string;
}

/** The line where it is a row; null for a comment, a line of words and an empty one. */
export function rowText(raw: string): string | null {
  const text = raw.trim();
  // Nearly all lines of a file begin with a figure.
  if (isFigure(text.charCodeAt(0))) return text;
  return COMMENT.test(text) || !NUMERIC.test(text) ? null : text;
}

const isFigure = (code: number): boolean => code >= 48 && code <= 57;

const SIGNS = { semicolon: ';', comma: ',' } as const;

/** The fields of a row; what a separator at its end leaves empty is none. */
export function fieldsOf(text: string, separator: Separator): string[] {
  if (separator === 'space') return words(text);
  const fields = text.split(SIGNS[separator]);
  for (let i = 0; i < fields.length; i++) fields[i] = fields[i]?.trim() ?? '';
  while (fields.at(-1) === '') fields.pop();
  return fields;
}

/** What stands between blanks, tabs and other control characters, and no-break spaces. */
function words(text: string): string[] {
  const found: string[] = [];
  for (let at = 0; at < text.length;) {
    const start = at;
    while (at < text.length && !isBlank(text.charCodeAt(at))) at += 1;
    if (at > start) found.push(text.slice(start, at));
    at += 1;
  }
  return found;
}

const isBlank = (code: number): boolean => code <= 32 || code === 0xa0;

const LOOSE = /^[+-]?[\d.,]*\d[\d.,]*(?:e[+-]?\d+)?$/i;
const WORD = /^[+-]?(?:nan|inf|infinity)$/i;

/** Whether a field is a number in some way of writing one, or a word in the place of one. */
export const isNumberLike = (field: string): boolean => (LOOSE.test(field) && !/[.,]$/.test(field.replace(/\.$/, ''))) || WORD.test(field); // prettier-ignore

const isRow = (text: string, separator: Separator): boolean => {
  const [first, second] = fieldsOf(text, separator);
  return first !== undefined && second !== undefined && isNumberLike(first) && isNumberLike(second);
};

/** Rows looked at to tell what stands between the columns. */
const LOOK = 200;

/** What makes two numbers or more of the most of the first rows; of two that do so alike, the first of semicolon, space, comma. Null where nothing does. */
export function separatorOf(rows: readonly Row[]): Separator | null {
  let best: { separator: Separator; rows: number } | null = null;
  for (const separator of ['semicolon', 'space', 'comma'] as const) {
    const made = rows.slice(0, LOOK).filter(({ text }) => isRow(text, separator)).length;
    if (made > (best?.rows ?? 0)) best = { separator, rows: made };
  }
  return best?.separator ?? null;
}

const GROUPED = { point: /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/, comma: /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d*)?$/ } as const;

/** A field as a number; NaN where it is none in that way of writing. `decimal`: the commas are decimal ones. */
export function numberIn(field: string, decimal: boolean): number {
  if (decimal) {
    if (!field.includes('.')) return plain(field.replace(',', '.'));
    return GROUPED.comma.test(field) ? plain(field.replaceAll('.', '').replace(',', '.')) : NaN;
  }
  return field.includes(',') && GROUPED.point.test(field) ? plain(field.replaceAll(',', '')) : plain(field);
}

/** A number of figures, with a point, a sign and a power of ten or without: `Number` takes blanks, words and other bases as well. */
function plain(text: string): number {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    // . + - E e
    if (!isFigure(code) && code !== 46 && code !== 43 && code !== 45 && code !== 69 && code !== 101) return NaN;
  }
  return text === '' ? NaN : Number(text);
}
