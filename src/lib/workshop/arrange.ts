import { beamReach, cutPath } from './kerf.ts';
import { cutterFaults, quantityFaults, sizeFaults, tooManySheets, type Spaces } from './arrangeFaults.ts';
import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import { layoutFaults } from './validity.ts';
import { nestable, originOf, type Nestable } from './nestable.ts';
import { shareBoards, type Board } from './share.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Stock } from '$lib/project/project.ts';
import type { Part, Placement, Sheet } from './part.ts';

/** mm. Parts are laid this much further apart than asked, as writers round both outlines to 0.001 mm. */
export const HAIR = 0.01;
/** More sheets than this are refused: nobody cuts them, and it bounds the work. */
export const MOST_SHEETS = 500;

export interface ArrangeOptions {
  /** Whether parts may be turned by a quarter turn; false where the grain must run one way. Default true. */
  readonly quarterTurns?: boolean;
}

/**
 * Every copy of every part on sheets of its stock, in the order of the stocks. The cutter's `spacing` is the least wood
 * between neighbouring finished outlines, at least the kerf; its `margin` the least distance from a finished outline to
 * the sheet's edge, at least half the kerf. Where the beam overshoots a sharp corner by more than the spacing allows,
 * parts stand further apart, so that no cut touches a neighbour. Deterministic; checked by `layoutFaults` before it leaves.
 *
 * Faults, with pointers from the project: a kerf that closes a hole, spacing or margin under the kerf's share, a part
 * larger than its sheet, more than 20,000 copies or 500 sheets.
 */
export function arrange(
  parts: readonly Part[],
  stocks: readonly Stock[],
  cutter: Spaces,
  { quarterTurns = true }: ArrangeOptions = {},
): Result<Sheet[]> {
  const early = [...cutterFaults(cutter), ...quantityFaults(parts, stocks)];
  if (early.length > 0) return failure(...early);
  const results = stocks.map((stock, index) => {
    const own = parts.filter((part) => part.stock === stock.name && part.quantity > 0);
    return arrangeStock(own, stock, index, cutter, quarterTurns);
  });
  const faults = results.flatMap((result) => (result.ok ? [] : result.faults));
  if (faults.length > 0) return failure(...faults);
  const sheets = results.flatMap((result) => (result.ok ? result.value : []));
  const wrong = layoutFaults(sheets, parts, cutter.spacing, cutter.margin);
  return wrong.length > 0 ? failure(...wrong) : success(sheets);
}

function arrangeStock(
  parts: readonly Part[],
  stock: Stock,
  index: number,
  cutter: Spaces,
  quarterTurns: boolean,
): Result<Sheet[]> {
  const apart = spacingFor(parts, cutter);
  if (!apart.ok) return apart;
  const spacing = apart.value + HAIR;
  const items = parts.map((part) => nestable(part, spacing, quarterTurns));
  const large = items.flatMap((item) => sizeFaults(item, stock, index, cutter.margin));
  if (large.length > 0) return failure(...large);
  const room = { width: stock.sheet.width - 2 * cutter.margin, height: stock.sheet.height - 2 * cutter.margin };
  const claimed = items.reduce((sum, { claim, part }) => sum + claim * part.quantity, 0);
  const least = Math.ceil(claimed / ((room.width + spacing) * (room.height + spacing)));
  const boards = least > MOST_SHEETS ? null : shareBoards(items, room, spacing, MOST_SHEETS);
  if (boards === null) return failure(tooManySheets(stock, index, MOST_SHEETS));
  return success(boards.map((board, i) => sheetOf(board, stock, i + 1, cutter.margin)));
}

/** The spacing asked for, or more where the beam at a mitred corner would come nearer a neighbour than that. */
function spacingFor(parts: readonly Part[], { kerf, spacing }: Spaces): Result<number> {
  const faults: Fault[] = [];
  let least = spacing;
  for (const part of parts) {
    const cut = cutPath(part, kerf);
    if (cut.ok) least = Math.max(least, beamReach(part, cut.value, kerf));
    else faults.push(...cut.faults);
  }
  return faults.length > 0 ? failure(...faults) : success(least);
}

function sheetOf(board: Board, stock: Stock, number: number, margin: number): Sheet {
  const { width, height } = stock.sheet;
  const used = board.copies.reduce((sum, { item }) => sum + finishedArea(item.part), 0);
  const placements = board.copies.map(({ item, spot }) => placementOf(item, spot.x, spot.y, spot.quarters, margin));
  return { stock: stock.name, number, width, height, placements, fill: used / (width * height) };
}

function placementOf(item: Nestable, x: number, y: number, quarters: number, margin: number): Placement {
  const [originX, originY] = originOf(item, quarters);
  return { part: item.part.name, x: margin + x + originX, y: margin + y + originY, turn: (quarters * Math.PI) / 2 };
}

/** The wood in a part, its holes left out, mm². */
const finishedArea = ({ outside, inside }: Part): number =>
  inside.reduce((area, hole) => area - Math.abs(signedArea(hole)), Math.abs(signedArea(outside)));
