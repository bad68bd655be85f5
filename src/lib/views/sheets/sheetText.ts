import { countText, lengthText, quantityText } from '$lib/views/figures.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Ending } from '$lib/state/nesting/messages.ts';
import type { Lengths } from '$lib/project/units.ts';
import type { Placement, Sheet } from '$lib/workshop/part.ts';
import type { StockResult } from '$lib/workshop/nest.ts';

/** What a sheet is called on the page: `MDF 3 mm, sheet 2`, `MDF 3 mm, offcut 1`. */
export const sheetTitle = ({ stock, number, offcut = false }: Sheet): string =>
  `${stock}, ${offcut ? 'offcut' : 'sheet'} ${number}`;

export const sheetFigures = ({ width, height, placements, fill }: Sheet, lengths: Lengths): string =>
  [
    `${lengthText(width, lengths)} × ${lengthText(height, lengths)}`,
    countText(placements.length, 'part', 'parts'),
    `${quantityText(100 * fill, 0, '%')} of it in parts`,
  ].join(', ');

/** How a stock came out, and how far that is from what cannot be beaten. */
export function stockText({ stock, sheets, least, offcuts }: StockResult): string {
  const used = [
    ...(sheets > 0 || offcuts === 0 ? [countText(sheets, 'sheet', 'sheets')] : []),
    ...(offcuts > 0 ? [countText(offcuts, 'offcut', 'offcuts')] : []),
  ].join(' and ');
  if (sheets <= least) return `${stock}: ${used}. By area alone no arrangement takes fewer sheets.`;
  return `${stock}: ${used}. By area alone it cannot be fewer than ${countText(least, 'sheet', 'sheets')}; nobody knows whether that can be had.`;
}

/** A part on its sheet: `slice, 12.0 mm right and 8.0 mm up, turned 90°, held`. */
export function placementText({ part, x, y, turn }: Placement, held: boolean, lengths: Lengths): string {
  const quarter = Math.round(degrees(turn));
  const turned = quarter === 0 ? '' : `, turned ${quarter}°`;
  return `${part}, ${lengthText(x, lengths)} right and ${lengthText(y, lengths)} up${turned}${held ? ', held' : ''}`;
}

/**
 * How the search stands.
 *
 * @param found Whether it has found an arrangement of the parts as they are now.
 */
export function searchText(share: number | null, ending: Ending | null, found: boolean): string {
  if (share !== null) return 'Looking for fewer sheets, and for more left over of one of them.';
  switch (ending) {
    case 'done':
      return 'The search has come to its end.';
    case 'time':
      return found
        ? 'The search took too long here and was ended. What you see can be cut.'
        : 'The search took too long here and was ended before it had found an arrangement. Search from another start.';
    case 'stopped':
      return found
        ? 'Stopped. What you see is the best so far, and can be cut.'
        : 'Stopped before an arrangement was found: there is nothing to cut yet. Search from another start to go on.';
    case null:
      return '';
  }
}
