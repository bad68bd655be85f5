import type { DimensionStyle } from './dimensionStyle.ts';
import type { Place } from './place.ts';
import { rowCounts } from './rows.ts';
import type { View } from './view.ts';

/** A rectangle of the paper, y down. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet can be squeezed to nothing while a window is dragged; the drawing stays finite. Paper units for each real mm. */
const LEAST_SCALE = 1e-4;

/** Whether a place leaves no room for a view beside its rows of dimensions. */
export const isSqueezed = ({ scale }: Place): boolean => scale <= LEAST_SCALE;

/** Least between the views, paper mm. */
const BETWEEN = 9;

/** Room for a number of rows beyond an outline: lines, what they run past, and the text on the last. */
const rowsRoom = (rows: number, { first, step, textGap, textSize, margin }: DimensionStyle): number =>
  rows === 0 ? margin : first + (rows - 1) * step + textGap + textSize + margin;

type Rows = ReturnType<typeof rowCounts>;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** How much paper stands above each view, and below the last: dimension rows, and the gap to the view before. */
function gapsOf(rows: readonly Rows[], style: DimensionStyle): number[] {
  const above = rows.map((row, index) => {
    const before = rows[index - 1];
    const own = rowsRoom(row.above, style);
    return before === undefined ? own : Math.max(BETWEEN * style.unit, rowsRoom(before.below, style) + own);
  });
  return [...above, rowsRoom(rows.at(-1)?.below ?? 0, style)];
}

/** Room beyond the outlines for the rows of all views: left of them and right of them. */
function margins(rows: readonly Rows[], style: DimensionStyle): readonly [before: number, behind: number] {
  const before = rowsRoom(Math.max(...rows.map((row) => row.left)), style);
  const behind = rowsRoom(Math.max(...rows.map((row) => row.right)), style);
  return [before, behind];
}

const endsOf = (views: readonly View[]): readonly [left: number, right: number] => [
  Math.min(...views.map(({ extent }) => extent[0])),
  Math.max(...views.map(({ extent }) => extent[2])),
];

/**
 * Places views under each other in one scale, as large as the frame allows with room for the rows of dimensions, and centred
 * in it. A place for each view, in their order. `atScale`: what becomes of the largest scale that fits.
 */
export function sheetLayout(
  views: readonly View[],
  frame: Frame,
  style: DimensionStyle,
  atScale: (most: number) => number = (most) => most,
): Place[] {
  const [left, right] = endsOf(views);
  const heights = views.map(({ extent }) => extent[3] - extent[1]);
  const rows = views.map(rowCounts);
  const [before, behind] = margins(rows, style);
  const gaps = gapsOf(rows, style);
  const [spareWidth, spareHeight] = [frame.width - before - behind, frame.height - sum(gaps)];
  const scale = Math.max(LEAST_SCALE, atScale(Math.min(spareWidth / (right - left), spareHeight / sum(heights))));
  const x = frame.left + before + (spareWidth - scale * (right - left)) / 2 - scale * left;
  const start = frame.top + (spareHeight - scale * sum(heights)) / 2;
  return views.map(({ extent }, index) => {
    const top = start + sum(gaps.slice(0, index + 1)) + scale * sum(heights.slice(0, index));
    return { scale, origin: [x, top + scale * extent[3]] };
  });
}
