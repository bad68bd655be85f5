import type { Box } from '$lib/drawing/box.ts';
import { spokenDimension } from '$lib/drawing/dimensionText.ts';
import { textRoom } from '$lib/drawing/drawDimension.ts';
import type { AngleDimension, Dimension } from '$lib/drawing/view.ts';
import { dimensionOn, dimensionPrimitives, type Paper } from '$lib/drawing/viewPrimitives.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { elementsOf, turnAbout, type Element } from './elements.ts';
import { linesData } from './pathData.ts';

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
  readonly elements: readonly Element[];
}

/** Least height of what is pressed, px: a little over the 24 of WCAG 2.2, target size. */
const LEAST = 26;

export function dimensionOnPaper(
  dimension: Dimension | AngleDimension,
  extent: Box,
  paper: Paper,
  display: LengthDisplay,
): DimensionOnPaper {
  const drawn = dimensionOn(dimension, extent, paper, display);
  const room = textRoom(drawn.text, paper.style);
  const [middle, over] = room.middle;
  const [width, height] = [Math.max(LEAST, room.width + 8), Math.max(LEAST, room.height + 6)];
  return {
    id: dimension.id,
    dimension,
    touch: {
      spoken: spokenDimension(dimension, display),
      target: { x: middle - width / 2, y: over - height / 2, width, height },
      turn: turnAbout(drawn.text.turn, middle, over),
      lines: linesData(drawn.lines),
    },
    elements: elementsOf(dimensionPrimitives(drawn, paper.style)),
  };
}
