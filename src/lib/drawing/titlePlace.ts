import type { DimensionStyle } from './dimensionStyle.ts';
import type { Frame } from './sheetLayout.ts';

/** A place for the title block and what it leaves of the frame. */
export interface TitlePlace {
  /** `corner`: lower right, beside the views. `strip`: along the bottom, below them. */
  readonly kind: 'corner' | 'strip';
  readonly block: Frame;
  readonly rest: Frame;
}

/** Paper mm. */
const CORNER = { width: 64, height: 50 };
const STRIP = { height: 21 };

/** Both places, each with the room it leaves. */
export function titlePlaces(frame: Frame, { unit }: DimensionStyle): readonly [TitlePlace, TitlePlace] {
  const { left, top, width, height } = frame;
  const corner = { width: Math.min(width, CORNER.width * unit), height: Math.min(height, CORNER.height * unit) };
  const strip = Math.min(height, STRIP.height * unit);
  return [
    {
      kind: 'strip',
      block: { left, top: top + height - strip, width, height: strip },
      rest: { left, top, width, height: height - strip },
    },
    {
      kind: 'corner',
      block: {
        left: left + width - corner.width,
        top: top + height - corner.height,
        ...corner,
      },
      rest: { left, top, width: width - corner.width, height },
    },
  ];
}
