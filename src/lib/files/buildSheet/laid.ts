import { openPath } from '$lib/geometry/contour.ts';
import { words, type Stroke } from '$lib/files/stroke.ts';
import type { ListBlock, TableBlock } from './block.ts';
import { wrapped } from './wrap.ts';

/** Something to set on a page that must not be torn apart: its height, and its strokes from its upper left. mm. */
export interface Laid {
  readonly height: number;
  readonly strokes: (left: number, top: number) => readonly Stroke[];
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

export const gap = (height: number): Laid => ({ height, strokes: () => [] });

const line = (text: string, height: number, x: number, y: number, most: number, anchor: 'start' | 'end' = 'start') =>
  words(text, { height, x, y, anchor }, most);

const rule = (left: number, y: number, width: number, weight = RULE): Stroke => ({
  contour: openPath([
    [left, y],
    [left + width, y],
  ]),
  width: weight,
});

/** A heading over a rule. */
export const laidTitle = (text: string, width: number): Laid => ({
  height: 11,
  keep: true,
  strokes: (left, top) => [...line(text, 4, left, top - 7, width), rule(left, top - 9, width, 0.5)],
});

export const laidHeading = (text: string, width: number): Laid => ({
  height: 7,
  keep: true,
  strokes: (left, top) => line(text, 2.8, left, top - 5, width),
});

export const laidText = (text: string, width: number): readonly Laid[] =>
  wrapped(text, BODY, width).map((words) => ({
    height: PITCH,
    strokes: (left, top) => line(words, BODY, left, top - BODY - 1, width),
  }));

/** Each item whole, its number or bullet before it. */
export const laidList = ({ numbered, items }: ListBlock, width: number): readonly Laid[] =>
  items.map((item, i) => {
    const lines = wrapped(item, BODY, width - INDENT);
    return {
      height: lines.length * PITCH + 1,
      strokes: (left, top) => [
        ...line(numbered ? `${i + 1}` : '–', BODY, left, top - BODY - 1, INDENT),
        ...lines.flatMap((words, row) =>
          line(words, BODY, left + INDENT, top - BODY - 1 - row * PITCH, width - INDENT),
        ),
      ],
    };
  });

/** Its heading row is kept with the first row; text at the left, figures at the right of their columns. */
export function laidTable({ columns, rows }: TableBlock, width: number): readonly Laid[] {
  const edges = edgesOf(columns.length, width);
  return [columns, ...rows].map((cells, row) => ({
    height: ROW,
    keep: row === 0,
    strokes: (left, top) => [
      ...cells.flatMap((cell, column) => {
        const [from, to] = [
          edges[column] ?? 0,
          (edges[column + 1] ?? width) - (column + 1 < columns.length ? GUTTER : 0),
        ];
        return column === 0
          ? line(cell, BODY, left + from, top - BODY - 1.2, to - from)
          : line(cell, BODY, left + to, top - BODY - 1.2, to - from, 'end');
      }),
      rule(left, top - ROW, width, row === 0 ? 2 * RULE : RULE / 1.4),
    ],
  }));
}

/** The first column has more of the room. */
const FIRST = 2;

const edgesOf = (count: number, width: number): readonly number[] => {
  const unit = width / (count - 1 + FIRST);
  return Array.from({ length: count }, (_, i) => (i === 0 ? 0 : (i - 1 + FIRST) * unit));
};
