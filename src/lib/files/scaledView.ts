import type { Box } from '$lib/drawing/box.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { movePrimitives, primitivesBox, type Primitive } from '$lib/drawing/primitive.ts';
import { closeRows, ofRank } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import type { View } from '$lib/drawing/view.ts';
import { viewPrimitives, type ViewPrimitives } from '$lib/drawing/viewPrimitives.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { printScales, type PrintScale } from './printSheet.ts';

/** ISO 128 lines of 0.25 and 0.5 mm, 2.5 mm lettering: one paper unit is a millimetre. */
export const PRINTED = dimensionStyle(1);

export interface Scaled {
  readonly primitives: readonly Primitive[];
  readonly width: number;
  readonly height: number;
  /** `1:10`. */
  readonly scale: string;
}

/** A view on paper, and the box round all of it, mm. */
export interface ViewAt extends ViewPrimitives {
  readonly box: Box;
}

export function viewAt(view: View, scale: PrintScale, display: LengthDisplay): ViewAt {
  const place = { scale: 1 / scale, origin: [0, 0] } as const;
  const { things, dimensions } = viewPrimitives(view, { place, style: PRINTED }, display);
  return { things, dimensions, box: primitivesBox([...things, ...dimensions]) };
}

/** A view at the largest standard scale that fits, from its upper left; null when none does. */
export function scaledView(view: View, width: number, height: number, display: LengthDisplay): Scaled | null {
  for (const scale of printScales) {
    // Below half size there is no room for what only a large drawing can hold.
    const { things, dimensions, box } = viewAt(closeRows(scale > 2 ? ofRank(view, 3) : view), scale, display);
    const [left, top, right, bottom] = box;
    if (right - left > width || bottom - top > height) continue;
    return {
      primitives: movePrimitives([...things, ...dimensions], [-left, -top]),
      width: right - left,
      height: bottom - top,
      scale: scaleText(1 / scale),
    };
  }
  return null;
}
