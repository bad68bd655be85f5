import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { angleLine } from './angleLine.ts';
import type { Box } from './box.ts';
import { dimensionLine } from './dimensionLine.ts';
import { textWidth, type DimensionStyle } from './dimensionStyle.ts';
import type { DrawnDimension, DrawnText } from './drawnDimension.ts';
import type { Place } from './place.ts';
import type { AngleDimension, Dimension } from './view.ts';

/** Middle of a line of figures over its base line, as a share of the text size. */
const HALF_FIGURE = 0.36;

/** A dimension of either kind on the paper. */
export const drawDimension = (
  dimension: Dimension | AngleDimension,
  place: Place,
  extent: Box,
  style: DimensionStyle,
  text: string,
): DrawnDimension =>
  dimension.kind === 'angle'
    ? angleLine(dimension, place, style, text)
    : dimensionLine(dimension, place, extent, style, text);

/** The middle of a text on the paper, and the room it takes along its line and square to it. */
export function textRoom(
  { text, at: [x, y], turn, anchor }: DrawnText,
  style: DimensionStyle,
): { readonly middle: Point; readonly width: number; readonly height: number } {
  const width = textWidth(text, style);
  const along = { start: width / 2, middle: 0, end: -width / 2 }[anchor];
  const over = HALF_FIGURE * style.textSize;
  const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  return { middle: [x + along * cos + over * sin, y + along * sin - over * cos], width, height: style.textSize };
}
