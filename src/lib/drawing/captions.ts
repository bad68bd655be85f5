import type { Point } from '$lib/geometry/point.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import { toPaper, type Zoom } from './place.ts';
import { scaleText } from './scaleText.ts';
import type { Pane } from './pane.ts';
import type { ViewName } from './views.ts';
import type { Frame } from './sheetLayout.ts';

/** What a view is called, line by line. */
export interface Caption {
  readonly key: ViewName;
  /** Which end of its lines stands at their places. */
  readonly anchor: 'start' | 'end';
  readonly lines: readonly { readonly text: string; readonly at: Point }[];
}

/** From one line to the next, in text sizes. */
const LINE = 1.35;
/** Paper mm: of the first line under the corner of a view's frame, and over the outline of a view of the desk. */
const UNDER = 5;
const OVER = 4;
/** From the edge of the sheet, paper mm. */
const INSET = 3;
/** Between what stands above a view and the view, in text sizes. */
const CLEAR = 0.5;

const underName = (key: ViewName): readonly string[] => (key === 'front' ? ['square to the baffle'] : []);

/**
 * What the views of a sheet are called: those of the desk above their outlines, the front alone at the top of the sheet, and those beside them in the upper right
 * corners of their frames: from the left, numbers of the desk's views may stand out towards them.
 */
export function captionsOf(panes: readonly Pane[], zoom: Zoom, style: DimensionStyle, mm: number): Caption[] {
  return panes.map(({ key, view, place, corner }) => {
    const { k, x: right, y: down } = zoom;
    const { unit } = style;
    const under = underName(key);
    if (corner === null) {
      const [, outline] = toPaper(place, [view.extent[0], view.extent[3]]);
      const y = under.length > 0 ? 0 : outline - OVER * unit;
      const start: Point = [right + INSET * unit, Math.max(UNDER * unit, y)];
      return { key, anchor: 'start', lines: lined([view.name, ...under], start, style) };
    }
    const start: Point = [k * (corner[0] - INSET * unit) + right, k * (corner[1] + UNDER * unit) + down];
    const second = [...under, scaleText(place.scale / mm)].join(', ');
    return { key, anchor: 'end', lines: lined([view.name, second], start, style) };
  });
}

const lined = (texts: readonly string[], [x, y]: Point, { textSize }: DimensionStyle): Caption['lines'] =>
  texts.map((text, index) => ({ text, at: [x, y + LINE * index * textSize] }));

/** The frame of a view without what two lines above it take. */
export function belowCaption(frame: Frame, { unit, textSize }: DimensionStyle): Frame {
  const taken = Math.min(frame.height, UNDER * unit + (LINE + CLEAR) * textSize);
  return { ...frame, top: frame.top + taken, height: frame.height - taken };
}
