import type { MeasuredCurve } from '$lib/proof/heard/curve.ts';

/** The ways in which programs write a response as text. */
export interface Way {
  readonly between: '\t' | ';' | ',' | ' ' | '  ' | '; ' | ', ';
  readonly decimal: '.' | ',';
  readonly end: '\n' | '\r\n' | '\r';
  readonly mark: '' | '\uFEFF';
  readonly head: readonly string[];
  /** Whether lines begin and end with blanks, and a separator ends each row. */
  readonly padded: boolean;
  readonly trailing: boolean;
  readonly plus: boolean;
  readonly quoted: boolean;
}

export const PLAIN: Way = { between: '\t', decimal: '.', end: '\n', mark: '', head: [], padded: false, trailing: false, plus: false, quoted: false }; // prettier-ignore

/** A number as text, all its digits. */
const numeral = (value: number, { decimal, plus }: Way): string =>
  `${plus && value >= 0 ? '+' : ''}${String(value).replace('.', decimal)}`;

/** A response as text; `order` says which row comes when. */
export function written(
  { frequencies, levels, phases }: MeasuredCurve,
  way: Way,
  order: readonly number[] = [...frequencies.keys()],
): string {
  const rows = order.map((at) => {
    const values = [frequencies[at] ?? 0, levels[at] ?? 0, ...(phases ? [phases[at] ?? 0] : [])];
    const cells = values.map((value) => numeral(value, way)).map((cell) => (way.quoted ? `"${cell}"` : cell));
    const row = `${cells.join(way.between)}${way.trailing && way.between.trim() !== '' ? way.between.trim() : ''}`;
    return way.padded ? `  ${row}\t` : row;
  });
  return way.mark + [...way.head, ...rows].join(way.end) + way.end;
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
