import { textWidth, type DimensionStyle } from './dimensionStyle.ts';
import type { Frame } from './sheetLayout.ts';

/** A place for the key to the lines and the scale, and what it leaves of the frame. */
export interface KeyPlace {
  /** `corner`: lower right, beside the views, a line each. `strip`: one line along the bottom, below them. */
  readonly kind: 'corner' | 'strip';
  readonly block: Frame;
  readonly rest: Frame;
}

/** The longest line of the key: what the corner must hold. */
const LONGEST = '1:12, lengths in inches';
/** Paper mm. */
const MARGIN = 3;
const CORNER_HEIGHT = 27;
const STRIP_HEIGHT = 8;

/** Both places, each with the room it leaves. */
export function keyPlaces(frame: Frame, style: DimensionStyle): readonly [KeyPlace, KeyPlace] {
  const { left, top, width, height } = frame;
  const { unit } = style;
  const corner = {
    width: Math.min(width, textWidth(LONGEST, style) + MARGIN * unit),
    height: Math.min(height, CORNER_HEIGHT * unit),
  };
  const strip = Math.min(height, STRIP_HEIGHT * unit);
  return [
    {
      kind: 'strip',
      block: { left, top: top + height - strip, width, height: strip },
      rest: { left, top, width, height: height - strip },
    },
    {
      kind: 'corner',
      block: { left: left + width - corner.width, top: top + height - corner.height, ...corner },
      rest: { left, top, width: width - corner.width, height },
    },
  ];
}
