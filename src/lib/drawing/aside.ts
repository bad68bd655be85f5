import type { DimensionStyle } from './dimensionStyle.ts';
import { keyPlaces, type KeyPlace } from './keyPlace.ts';
import type { Frame } from './sheetLayout.ts';

/** Least width of the column beside the views of the desk, paper mm: a cabinet with its rows of dimensions. */
export const ASIDE_LEAST = 62;
/** The column is no wider than this share of the sheet. */
const ASIDE_MOST = 0.45;
/** What the front of the cabinet takes of the column's height; its stand has the rest. */
const FRONT_SHARE = 0.58;

/** A sheet in two columns. */
export interface Aside {
  /** For the views of the desk; the key stands in the other column. */
  readonly desk: KeyPlace;
  readonly front: Frame;
  readonly stand: Frame;
}

/** The sheet's columns, where the views of the desk take so much of its width. */
export function asideFrames(frame: Frame, taken: number, style: DimensionStyle): Aside {
  const [, { block }] = keyPlaces(frame, style);
  const width = Math.min(frame.width - taken, ASIDE_MOST * frame.width);
  const column = { left: frame.left + frame.width - width, width };
  const height = Math.max(0, frame.height - block.height);
  return {
    desk: { kind: 'corner', block, rest: { ...frame, width: frame.width - width } },
    front: { ...column, top: frame.top, height: FRONT_SHARE * height },
    stand: { ...column, top: frame.top + FRONT_SHARE * height, height: (1 - FRONT_SHARE) * height },
  };
}
