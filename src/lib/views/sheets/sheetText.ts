import { countText, lengthText, quantityText } from '$lib/views/ui/formatNumber.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Lengths } from '$lib/project/units.ts';
import type { Placement, Sheet } from '$lib/workshop/part.ts';
import type { StockResult } from '$lib/workshop/nesting/nest.ts';

/** What a sheet is called on the page: `MDF 3 mm, sheet 2`, `MDF 3 mm, offcut 1`. */
export const sheetTitle = ({ stock, number, offcut = false }: Sheet): string =>
  `${stock}, ${offcut ? 'offcut' : 'sheet'} ${number}`;

export const sheetFigures = ({ width, height, placements, fill }: Sheet, lengths: Lengths): string =>
  [
    `${lengthText(width, lengths)} × ${lengthText(height, lengths)}`,
    countText(placements.length, 'part', 'parts'),
    `${quantityText(100 * fill, 0, '%')} used`,
  ].join(', ');

/** How a stock came out, and how far that is from what cannot be beaten. */
export function stockText({ stock, sheets, least, offcuts }: StockResult): string {
  const used = [
    ...(sheets > 0 || offcuts === 0 ? [countText(sheets, 'sheet', 'sheets')] : []),
    ...(offcuts > 0 ? [countText(offcuts, 'offcut', 'offcuts')] : []),
  ].join(' and ');
  if (sheets <= least) return `${stock}: ${used}. By area alone no arrangement takes fewer sheets.`;
  return `${stock}: ${used}. By area alone it cannot be fewer than ${countText(least, 'sheet', 'sheets')}; that may not be achievable.`;
}

/** A part on its sheet: `slice, 12.0 mm right and 8.0 mm up, turned 90°, locked`. */
export function placementText({ part, x, y, turn }: Placement, locked: boolean, lengths: Lengths): string {
  const quarter = Math.round(degrees(turn));
  const turned = quarter === 0 ? '' : `, turned ${quarter}°`;
  return `${part}, ${lengthText(x, lengths)} right and ${lengthText(y, lengths)} up${turned}${locked ? ', locked' : ''}`;
}

/** How the search stands. `share`: how much of it is done, 0…1; null while none is under way. */
export function searchText(share: number | null, cancelled: boolean, finished: boolean): string {
  if (share !== null)
    return 'Looking for fewer sheets, and for more left over of one of them. Files are made when the search has ended.';
  if (cancelled)
    return 'Cancelled before an arrangement was found: there is nothing to cut yet. Try another arrangement to go on.';
  return finished ? 'The search has come to its end.' : '';
}
