import { extentOf } from '$lib/geometry/extent.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import { sheetName, type Part, type Sheet } from '$lib/workshop/part.ts';
import { pointsOf } from './partView.ts';
import type { Item, View } from './view.ts';

/**
 * One sheet with its parts at their finished sizes, each with its number in the legend, from 1: names have no room on parts.
 *
 * @param legend names of parts, in the order of their numbers.
 * @throws Error when the sheet carries a part that is not among `parts` or not in the legend.
 */
export function arrangementView(sheet: Sheet, parts: readonly Part[], legend: readonly string[]): View {
  const { width, height } = sheet;
  const edge = [[0, 0], [width, 0], [width, height], [0, height]] as const; // prettier-ignore
  return {
    name: `Arrangement of ${sheetName(sheet)}`,
    extent: [0, 0, width, height],
    items: [
      { kind: 'outline', id: 'sheet', subject: 'desk', pen: 'narrow', points: edge, closed: true, filled: false },
      ...sheet.placements.flatMap((placement, i): readonly Item[] => {
        const part = parts.find(({ name }) => name === placement.part);
        const number = legend.indexOf(placement.part) + 1;
        if (!part || number === 0) throw new Error(`sheet ${sheetName(sheet)}: no part is named "${placement.part}"`);
        const contours = [part.outside, ...part.inside].map((contour) => placedContour(contour, placement));
        const { left, right, bottom, top } = extentOf(placedContour(part.outside, placement));
        const middle = [(left + right) / 2, (bottom + top) / 2] as const;
        return [
          ...contours.map((contour, k): Item => ({
            kind: 'outline',
            id: `part-${i}-${k}`,
            subject: k === 0 ? 'stand' : 'desk',
            pen: k === 0 ? 'wide' : 'narrow',
            points: pointsOf(contour),
            closed: true,
            filled: k === 0,
          })),
          { kind: 'label', id: `number-${i}`, subject: 'stand', text: `${number}`, at: middle, anchor: 'middle' },
        ];
      }),
    ],
  };
}
