import type { Box } from '$lib/drawing/box.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText, spokenDimension } from '$lib/drawing/dimensionText.ts';
import { drawDimension, textRoom } from '$lib/drawing/drawDimension.ts';
import type { DrawnText } from '$lib/drawing/drawnDimension.ts';
import type { Place } from '$lib/drawing/place.ts';
import type { AngleDimension, Dimension } from '$lib/drawing/view.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { linesData, pathData } from './pathData.ts';

/** What of a dimension is pressed and heard, and not seen. */
export interface DimensionTouch {
  /** What a screen reader says. */
  readonly spoken: string;
  /** Room round the text. */
  readonly target: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly turn: string | undefined;
  readonly lines: string;
}

/** What a screen draws for one dimension, in px on the sheet. */
export interface DimensionOnPaper {
  readonly id: string;
  readonly dimension: Dimension | AngleDimension;
  /** What is pressed and heard. */
  readonly touch: DimensionTouch;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: DrawnText['anchor'];
  /** Of the text; undefined for a level one. */
  readonly turn: string | undefined;
  readonly extensions: string;
  readonly lines: string;
  readonly arrows: string;
}

/** Least height of what is pressed, px: a little over the 24 of WCAG 2.2, target size. */
const LEAST = 26;

export function dimensionOnPaper(
  dimension: Dimension | AngleDimension,
  place: Place,
  extent: Box,
  style: DimensionStyle,
  display: LengthDisplay,
): DimensionOnPaper {
  const text = dimensionText(dimension, display);
  const drawn = drawDimension(dimension, place, extent, style, text);
  const room = textRoom(drawn.text, style);
  const [x, y] = drawn.text.at;
  const [middle, over] = room.middle;
  const [width, height] = [Math.max(LEAST, room.width + 8), Math.max(LEAST, room.height + 6)];
  const turned = (aboutX: number, aboutY: number): string | undefined =>
    drawn.text.turn === 0 ? undefined : `rotate(${drawn.text.turn} ${aboutX} ${aboutY})`;
  const lines = linesData(drawn.lines);
  return {
    id: dimension.id,
    dimension,
    touch: {
      spoken: spokenDimension(dimension, display),
      target: { x: middle - width / 2, y: over - height / 2, width, height },
      turn: turned(middle, over),
      lines,
    },
    text,
    x,
    y,
    anchor: drawn.text.anchor,
    turn: turned(x, y),
    extensions: linesData(drawn.extensions),
    lines,
    arrows: drawn.arrows.map((arrow) => pathData(arrow, true)).join(''),
  };
}
