import { line as lineThrough, type Primitive } from '$lib/drawing/primitive.ts';
import { words, wrapped } from '$lib/files/pdf/words.ts';
import type { ListBlock, TableBlock } from './block.ts';

/** Something to set on a page that must not be torn apart: its height, and what is drawn from its upper left. mm, y down. */
export interface Laid {
  readonly height: number;
  readonly drawn: (left: number, top: number) => readonly Primitive[];
  /** Whether what comes next must stand on the same page. */
  readonly keep?: boolean;
}

/** Height of capitals, and from line to line, mm. */
export const BODY = 2.4;
const PITCH = 4.6;
const RULE = 0.18;
const INDENT = 7;
const ROW = 5.4;
/** Between columns. */
const GUTTER = 3;

export const gap = (height: number): Laid => ({ height, drawn: () => [] });

const line = (text: string, height: number, x: number, y: number, most: number, anchor: 'start' | 'end' = 'start') =>
  words(text, { height, x, y, anchor }, most);

const rule = (left: number, y: number, width: number, weight = RULE): Primitive =>
  lineThrough([[left, y], [left + width, y]], weight); // prettier-ignore

/** A heading over a rule. */
export const laidTitle = (text: string, width: number): Laid => ({
  height: 11,
  keep: true,
  drawn: (left, top) => [line(text, 4, left, top + 7, width), rule(left, top + 9, width, 0.5)],
});

export const laidHeading = (text: string, width: number): Laid => ({
  height: 7,
  keep: true,
  drawn: (left, top) => [line(text, 2.8, left, top + 5, width)],
});

export const laidText = (text: string, width: number): readonly Laid[] =>
  wrapped(text, BODY, width).map((words) => ({
    height: PITCH,
    drawn: (left, top) => [line(words, BODY, left, top + BODY + 1, width)],
  }));

/** Each item whole, its number or bullet before it. */
export const laidList = ({ numbered, items }: ListBlock, width: number): readonly Laid[] =>
  items.map((item, i) => {
    const lines = wrapped(item, BODY, width - INDENT);
    return {
      height: lines.length * PITCH + 1,
      drawn: (left, top) => [
        line(numbered ? `${i + 1}` : '–', BODY, left, top + BODY + 1, INDENT),
        ...lines.map((words, row) => line(words, BODY, left + INDENT, top + BODY + 1 + row * PITCH, width - INDENT)),
      ],
    };
  });

/** Its heading row is kept with the first row; text at the left, figures at the right of their columns. */
export function laidTable({ columns, rows }: TableBlock, width: number): readonly Laid[] {
  const edges = edgesOf(columns.length, width);
  return [columns, ...rows].map((cells, row) => ({
    height: ROW,
    keep: row === 0,
    drawn: (left, top) => [
      ...cells.map((cell, column) => {
        const [from, to] = [
          edges[column] ?? 0,
          (edges[column + 1] ?? width) - (column + 1 < columns.length ? GUTTER : 0),
        ];
        return column === 0
          ? line(cell, BODY, left + from, top + BODY + 1.2, to - from)
          : line(cell, BODY, left + to, top + BODY + 1.2, to - from, 'end');
      }),
      rule(left, top + ROW, width, row === 0 ? 2 * RULE : RULE / 1.4),
    ],
  }));
}

/** The first column has more of the room. */
const FIRST = 2;

const edgesOf = (count: number, width: number): readonly number[] => {
  const unit = width / (count - 1 + FIRST);
  return Array.from({ length: count }, (_, i) => (i === 0 ? 0 : (i - 1 + FIRST) * unit));
};
