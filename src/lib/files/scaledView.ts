import type { Box } from '$lib/drawing/box.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { placeTexts } from '$lib/drawing/placeTexts.ts';
import { movePrimitives, primitivesBox, type Primitive } from '$lib/drawing/primitive.ts';
import { closeRows, ofRank } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import type { View } from '$lib/drawing/view.ts';
import { isDimension, viewPrimitives, type Paper, type ViewPrimitives } from '$lib/drawing/viewPrimitives.ts';
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

/** A sheet is chosen for the view, not the view for a sheet: room beyond any, mm. */
const ANYWHERE = { left: -1e6, top: -1e6, width: 2e6, height: 2e6 } as const;

/** The view with its texts clear of one another and of the lines. Paper is not enlarged: a size without such a place keeps its own. */
function textsClear(view: View, paper: Paper, display: LengthDisplay): View {
  const placed = placeTexts(view, paper, display, ANYWHERE);
  const found = new Map(placed.items.map((item) => [item.id, item]));
  return { ...view, items: view.items.flatMap((item) => found.get(item.id) ?? (isDimension(item) ? [item] : [])) };
}

export function viewAt(view: View, scale: PrintScale, display: LengthDisplay): ViewAt {
  const paper = { place: { scale: 1 / scale, origin: [0, 0] }, style: PRINTED } as const;
  const { things, dimensions } = viewPrimitives(textsClear(view, paper, display), paper, display);
  return { things, dimensions, box: primitivesBox([...things, ...dimensions]) };
}

/** A view at the largest standard scale that fits, from its upper left; null when none does. */
export function scaledView(view: View, width: number, height: number, display: LengthDisplay): Scaled | null {
  for (const scale of printScales) {
    // Below half size there is no room for what only a large drawing can hold.
    const { things, dimensions, box } = viewAt(closeRows(ofRank(view, scale > 2 ? 3 : 4)), scale, display);
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

/** What stands under a view that is put on paper: its name and its scale, where it has one. */
export const scaledName = ({ name, toScale }: View, scale: string): string =>
  toScale === false ? name : `${name}, ${scale}`;
