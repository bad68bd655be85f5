import type { DimensionStyle } from './dimensionStyle.ts';
import type { DrawnText } from './drawnDimension.ts';
import { toPaper, type Place } from './place.ts';
import type { Label } from './view.ts';

/** Capitals reach so far over the base line, as a share of the text size: half of it below a label's point. */
const HALF_CAPITAL = 0.36;

/** A label on the paper: level, the middle of its capitals on its point or so far from it as it is moved. */
export function labelText(
  { at, shift = [0, 0], text, anchor }: Label,
  place: Place,
  { textSize }: DimensionStyle,
): DrawnText {
  const [x, y] = toPaper(place, at);
  return { text, anchor, turn: 0, at: [x + shift[0] * textSize, y + (shift[1] + HALF_CAPITAL) * textSize] };
}
