import { extentOf } from '$lib/geometry/extent.ts';
import { contourLength } from '$lib/geometry/contourLength.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Part, Sheet } from './part.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';
import type { Take } from './standParts.ts';

/** What to cut of one part. Lengths in mm, areas in mm², all of one copy at its finished size. */
export interface CutListRow {
  readonly part: string;
  readonly stock: string;
  readonly thickness: number;
  /** For the left stand, for the right one, and for both. */
  readonly left: number;
  readonly right: number;
  readonly quantity: number;
  /** Of its bounding box. */
  readonly width: number;
  readonly height: number;
  /** Holes left out. */
  readonly area: number;
  /** Outside and holes; marks are not cut. */
  readonly cutLength: number;
  /** Its stock's sheets that carry a copy: `offcut 1` and so on first, whole sheets by their numbers, rising. */
  readonly sheets: readonly (number | string)[];
  /** Its lettering, one line. */
  readonly label: string;
}

/** One row a part, in their order. `takes`: what each stand takes of the parts. */
export const cutList = (
  parts: readonly Part[],
  takes: Readonly<Record<SideName, readonly Take[]>>,
  sheets: readonly Sheet[],
): CutListRow[] =>
  parts.map((part) => {
    const taken = (side: SideName): number => takes[side].find((take) => take.part === part.name)?.quantity ?? 0;
    const { outside, inside } = part;
    const { left, right, bottom, top } = extentOf(outside);
    const carries = ({ stock, placements }: Sheet): boolean =>
      stock === part.stock && placements.some((placement) => placement.part === part.name);
    return {
      part: part.name,
      stock: part.stock,
      thickness: part.thickness,
      left: taken('left'),
      right: taken('right'),
      quantity: part.quantity,
      width: right - left,
      height: top - bottom,
      area: inside.reduce((area, hole) => area - Math.abs(signedArea(hole)), Math.abs(signedArea(outside))),
      cutLength: [outside, ...inside].reduce((sum, contour) => sum + contourLength(contour), 0),
      sheets: sheets.filter(carries).map(({ number, offcut = false }) => (offcut ? `offcut ${number}` : number)),
      label: labelsOf(part)
        .map(({ text }) => text)
        .join(' '),
    };
  });

/** How many of a part: `53 for each stand, 106 for both`; `2 for the left stand`. */
export function quantityText({ left, right, quantity }: Pick<CutListRow, 'left' | 'right' | 'quantity'>): string {
  if (left === right) return `${left} for each stand, ${quantity} for both`;
  if (left === 0 || right === 0) return `${quantity} for the ${left === 0 ? 'right' : 'left'} stand`;
  return `${left} for the left stand, ${right} for the right one`;
}
