import type { DimensionStyle } from './dimensionStyle.ts';
import type { Frame } from './sheetLayout.ts';

/** Paper mm. */
const STRIP_HEIGHT = 8;

/** One line along the bottom of a frame, for the key to the lines, and what it leaves. */
export function keyPlace(frame: Frame, { unit }: DimensionStyle): { readonly block: Frame; readonly rest: Frame } {
  const strip = Math.min(frame.height, STRIP_HEIGHT * unit);
  const height = frame.height - strip;
  return { block: { ...frame, top: frame.top + height, height: strip }, rest: { ...frame, height } };
}
