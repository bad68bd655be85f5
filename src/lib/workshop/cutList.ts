import { extentOf } from '$lib/geometry/extent.ts';
import { contourLength } from '$lib/geometry/contourLength.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Part, Sheet } from './part.ts';
import { labelsOf } from './pieceLabel.ts';

/** What to cut of one part. Lengths in mm, areas in mm², all of one copy at its finished size. */
export interface CutListRow {
  readonly part: string;
  readonly stock: string;
  readonly thickness: number;
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

/** One row a part, in their order. */
export const cutList = (parts: readonly Part[], sheets: readonly Sheet[]): CutListRow[] =>
  parts.map((part) => {
    const { outside, inside } = part;
    const { left, right, bottom, top } = extentOf(outside);
    const carries = ({ stock, placements }: Sheet): boolean =>
      stock === part.stock && placements.some((placement) => placement.part === part.name);
    return {
      part: part.name,
      stock: part.stock,
      thickness: part.thickness,
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
