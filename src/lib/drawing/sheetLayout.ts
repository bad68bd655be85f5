import type { DimensionStyle } from './dimensionStyle.ts';
import type { Place } from './place.ts';
import { rowCounts } from './rows.ts';
import type { View } from './view.ts';

/** Where the two views of a sheet lie. Both have one scale. */
export interface SheetLayout {
  readonly top: Place;
  readonly side: Place;
}

/** A rectangle of the paper, y down. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet can be squeezed to nothing while a window is dragged; the drawing stays finite. Paper units for each real mm. */
const LEAST_SCALE = 1e-4;
/** Paper mm round the views beyond their dimensions, and least between the views. */
const PAD = 4;
const BETWEEN = 8;

/** Room for a number of rows beyond an outline: lines, what they run past, and the text on the last. */
const rowsRoom = (rows: number, { first, step, textGap, textSize, unit }: DimensionStyle): number =>
  rows === 0 ? PAD * unit : first + (rows - 1) * step + textGap + textSize + PAD * unit;

/**
 * Third angle: the view from above over the view from the side, on one axis and in one scale, as large as the frame
 * allows with room for the rows of dimensions, and centred in it.
 */
export function sheetLayout(top: View, side: View, frame: Frame, style: DimensionStyle): SheetLayout {
  const rows = [rowCounts(top), rowCounts(side)] as const;
  const left = Math.min(top.extent[0], side.extent[0]);
  const right = Math.max(top.extent[2], side.extent[2]);
  const heights = [top.extent[3] - top.extent[1], side.extent[3] - side.extent[1]] as const;
  const before = rowsRoom(Math.max(rows[0].left, rows[1].left), style);
  const behind = rowsRoom(Math.max(rows[0].right, rows[1].right), style);
  const above = rowsRoom(rows[0].above, style);
  const gap = Math.max(BETWEEN * style.unit, rowsRoom(rows[0].below, style) + rowsRoom(rows[1].above, style));
  const below = rowsRoom(rows[1].below, style);
  const scale = Math.max(
    LEAST_SCALE,
    Math.min(
      (frame.width - before - behind) / (right - left),
      (frame.height - above - gap - below) / (heights[0] + heights[1]),
    ),
  );
  const spareAcross = frame.width - before - behind - scale * (right - left);
  const spareDown = frame.height - above - gap - below - scale * (heights[0] + heights[1]);
  const x = frame.left + before + spareAcross / 2 - scale * left;
  const topEdge = frame.top + above + spareDown / 2;
  const sideEdge = topEdge + scale * heights[0] + gap;
  return {
    top: { scale, origin: [x, topEdge + scale * top.extent[3]] },
    side: { scale, origin: [x, sideEdge + scale * side.extent[3]] },
  };
}
