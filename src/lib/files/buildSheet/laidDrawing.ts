import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { closeRows, ofRank } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import type { View } from '$lib/drawing/view.ts';
import { marksBox, moveMarks, type Mark } from '$lib/files/marks.ts';
import { printScales } from '$lib/files/printSheet.ts';
import { words } from '$lib/files/stroke.ts';
import { viewMarks } from '$lib/files/viewMarks.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { DrawingBlock } from './block.ts';
import { BODY, gap, laidText, type Laid } from './laid.ts';
import { markStrokes } from './markStrokes.ts';

const STYLE = dimensionStyle(1);
const CAPTION = 6;

/** A view at the largest standard scale that fits, as marks from its upper left; null when none does. */
export function scaledView(view: View, width: number, height: number, display: LengthDisplay): Scaled | null {
  for (const scale of printScales) {
    const place = { scale: 1 / scale, origin: [0, 0] } as const;
    // Below half size there is no room for what only a large drawing can hold.
    const shown = closeRows(scale > 2 ? ofRank(view, 2) : view);
    const { things, dimensions } = viewMarks(shown, { place, style: STYLE, display, hatch: 'url(#hatch)' });
    const marks = [...things, ...dimensions];
    const [left, top, right, bottom] = marksBox(marks);
    if (right - left > width || bottom - top > height) continue;
    return {
      marks: moveMarks(marks, [-left, -top]),
      width: right - left,
      height: bottom - top,
      scale: scaleText(1 / scale),
    };
  }
  return null;
}

export interface Scaled {
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
  /** `1:10`. */
  readonly scale: string;
}

/** The view in the middle of the page, its name, scale and note under it; a line that says so where it fits at no scale. */
export function laidDrawing(
  { view, note }: DrawingBlock,
  width: number,
  most: number,
  display: LengthDisplay,
  page: number,
): readonly Laid[] {
  const scaled = scaledView(view, width, most - CAPTION, display);
  const caption = scaled ? `${view.name}, ${scaled.scale}` : `${view.name}: too large for this page, see its own file`;
  const high = scaled?.height ?? 0;
  const lines = note === null ? [] : laidText(note, width);
  return [
    {
      height: high + CAPTION,
      keep: lines.length > 0,
      strokes: (left, top) => [
        ...(scaled
          ? moveMarks(scaled.marks, [left + (width - scaled.width) / 2, page - top]).flatMap((mark) =>
              markStrokes(mark, page),
            )
          : []),
        ...words(caption, { height: BODY, x: left + width / 2, y: top - high - CAPTION + 1, anchor: 'middle' }, width),
      ],
    },
    ...lines.map((line, i) => ({ ...line, keep: i < lines.length - 1 })),
    gap(6),
  ];
}
