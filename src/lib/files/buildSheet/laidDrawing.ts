import { movePrimitives } from '$lib/drawing/primitive.ts';
import { words } from '$lib/files/pdf/words.ts';
import { scaledName, scaledView } from '$lib/files/scaledView.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { DrawingBlock } from './block.ts';
import { BODY, gap, laidText, type Laid } from './laid.ts';

const CAPTION = 6;

/** The view in the middle of the page, its name, scale and note under it; a line that says so where it fits at no scale. */
export function laidDrawing(
  { view, note }: DrawingBlock,
  width: number,
  most: number,
  display: LengthDisplay,
): readonly Laid[] {
  const scaled = scaledView(view, width, most - CAPTION, display);
  const caption = scaled ? scaledName(view, scaled.scale) : `${view.name}: too large for this page, see its own file`;
  const high = scaled?.height ?? 0;
  const lines = note === null ? [] : laidText(note, width);
  return [
    {
      height: high + CAPTION,
      keep: lines.length > 0,
      drawn: (left, top) => [
        ...(scaled ? movePrimitives(scaled.primitives, [left + (width - scaled.width) / 2, top]) : []),
        words(caption, { height: BODY, x: left + width / 2, y: top + high + CAPTION - 1, anchor: 'middle' }, width),
      ],
    },
    ...lines.map((line, i) => ({ ...line, keep: i < lines.length - 1 })),
    gap(6),
  ];
}
