import { beamReach, cutPath } from '$lib/workshop/kerf.ts';
import {
  cutterFaults,
  ownKerfFault,
  quantityFaults,
  sizeFaults,
  stockKerfFault,
  supplyFaults,
  tooManySheets,
  type Spaces,
} from './arrangeFaults.ts';
import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import { layoutFaults } from './validity.ts';
import { nestable, originOf, type Nestable } from './nestable.ts';
import { shareBoards, type Board } from './share.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Stock } from '$lib/project/project.ts';
import type { Part, Placement, Sheet } from '$lib/workshop/part.ts';
import type { Room } from './rows.ts';

/** mm. Parts are laid this much further apart than asked, as writers round both outlines to 0.001 mm. */
export const HAIR = 0.01;
/** More sheets than this are refused: nobody cuts them, and it bounds the work. */
export const MOST_SHEETS = 500;

export interface ArrangeOptions {
  /** Whether parts may be turned by a quarter turn; never where the stock's grain must run one way. Default true. */
  readonly quarterTurns?: boolean;
}

/**
 * Every copy of every part on offcuts and sheets of its stock, in the order of the stocks; offcuts come first. The cutter's `spacing` is the least wood
 * between neighbouring finished outlines, at least the kerf; its `margin` the least distance from a finished outline to
 * the sheet's edge, at least half the kerf. Where the beam overshoots a sharp corner by more than the spacing allows,
 * parts stand further apart, so that no cut touches a neighbour. Deterministic; checked by `layoutFaults` before it leaves.
 *
 * Faults, with pointers from the project: a kerf that closes a hole, spacing or margin under the kerf's share, a part
 * larger than its sheet, more than 20,000 copies or 500 sheets, more sheets than there are.
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
    const sheets = arrangeStock(partsOf(parts, stock), stock, index, cutter, quarterTurns);
    return sheets.ok ? withinSupply(sheets.value, stock, index) : sheets;
  });
  const faults = results.flatMap((result) => (result.ok ? [] : result.faults));
  if (faults.length > 0) return failure(...faults);
  const sheets = results.flatMap((result) => (result.ok ? result.value : []));
  const wrong = layoutFaults(sheets, parts, cutter.spacing, cutter.margin);
  return wrong.length > 0 ? failure(...wrong) : success(sheets);
}

/** The parts to be cut from a stock. */
export const partsOf = (parts: readonly Part[], stock: Stock): Part[] =>
  parts.filter((part) => part.stock === stock.name && part.quantity > 0);

function withinSupply(sheets: Sheet[], stock: Stock, index: number): Result<Sheet[]> {
  const short = supplyFaults(sheets, stock, index);
  return short.length > 0 ? failure(...short) : success(sheets);
}

/** The same for one stock, on as many whole sheets as it takes; not yet checked. */
function arrangeStock(
  parts: readonly Part[],
  stock: Stock,
  index: number,
  cutter: Spaces,
  quarterTurns = true,
): Result<Sheet[]> {
  const apart = spacingFor(parts, stock, index, cutter);
  return apart.ok ? arrangeApart(parts, stock, index, cutter.margin, apart.value + HAIR, quarterTurns) : apart;
}

/** The same where it is known how far apart parts of the stock are laid, the hair counted in. */
const arrangeApart = (...given: Parameters<typeof arrangeApartSteps>): Result<Sheet[]> =>
  toTheEnd(arrangeApartSteps(...given));

/** The same with pauses. */
export function* arrangeApartSteps(
  parts: readonly Part[],
  stock: Stock,
  index: number,
  margin: number,
  spacing: number,
  quarterTurns = true,
): Generator<undefined, Result<Sheet[]>> {
  const items: Nestable[] = [];
  for (const part of parts) {
    items.push(nestable(part, spacing, quarterTurns && stock.grain === 'none'));
    yield;
  }
  const large = items.flatMap((item) => sizeFaults(item, stock, index, margin));
  if (large.length > 0) return failure(...large);
  const room = usable(stock.sheet, margin);
  const offcuts = offcutsOf(stock).map((offcut) => usable(offcut, margin));
  const claimed = items.reduce((sum, { claim, part }) => sum + claim * part.quantity, 0);
  const spare = offcuts.reduce((sum, offcut) => sum + capacityOf(offcut, spacing), 0);
  const least = Math.ceil((claimed - spare) / capacityOf(room, spacing));
  const boards = least > MOST_SHEETS ? null : yield* shareBoards(items, room, spacing, MOST_SHEETS, offcuts);
  if (boards === null) return failure(tooManySheets(stock, index, MOST_SHEETS));
  let number = 0;
  return success(boards.map((board) => sheetOf(board, stock, board.offcut ?? ++number, margin)));
}

/** What the margin leaves of a board; nothing of one that is all margin. */
export const usable = ({ width, height }: Room, margin: number): Room => ({
  width: Math.max(0, width - 2 * margin),
  height: Math.max(0, height - 2 * margin),
});

/** What parts can claim of a room at the most, half the spacing round each counted in, mm². */
export const capacityOf = ({ width, height }: Room, spacing: number): number => (width + spacing) * (height + spacing);

/** Every offcut of a stock, one by one: the first is number 1. */
export const offcutsOf = ({ offcuts }: Stock): Room[] =>
  offcuts.flatMap(({ width, height, count }) => Array.from({ length: count }, () => ({ width, height })));

/** The spacing asked for, or more where the beam at a mitred corner would come nearer a neighbour than that. */
export const spacingFor = (...given: Parameters<typeof spacingForSteps>): Result<number> =>
  toTheEnd(spacingForSteps(...given));

/** The same with a pause after each part. */
export function* spacingForSteps(
  parts: readonly Part[],
  stock: Stock,
  index: number,
  { kerf, spacing }: Spaces,
): Generator<undefined, Result<number>> {
  const own = stock.kerf ?? kerf;
  if (parts.length > 0 && own > spacing) return failure(stockKerfFault(own, spacing, index));
  const faults: Fault[] = [];
  let least = spacing;
  for (const part of parts) {
    const cut = cutPath(part, own);
    if (cut.ok) least = Math.max(least, beamReach(part, cut.value, own));
    else faults.push(...cut.faults);
    yield;
  }
  if (faults.length === 0) return success(least);
  return failure(...(stock.kerf === null ? faults : faults.map((fault) => ownKerfFault(fault, stock, index, kerf))));
}

function sheetOf(board: Board, stock: Stock, number: number, margin: number): Sheet {
  const offcut = board.offcut === null ? undefined : offcutsOf(stock)[board.offcut - 1];
  const { width, height } = offcut ?? stock.sheet;
  const used = board.copies.reduce((sum, { item }) => sum + finishedArea(item.part), 0);
  const placements = board.copies.map(({ item, spot }) => placementOf(item, spot.x, spot.y, spot.quarters, margin));
  const sheet = { stock: stock.name, number, width, height, placements, fill: used / (width * height) };
  return offcut === undefined ? sheet : { ...sheet, offcut: true };
}

function placementOf(item: Nestable, x: number, y: number, quarters: number, margin: number): Placement {
  const [originX, originY] = originOf(item, quarters);
  return { part: item.part.name, x: margin + x + originX, y: margin + y + originY, turn: (quarters * Math.PI) / 2 };
}

/** The wood in a part, its holes left out, mm². */
export const finishedArea = ({ outside, inside }: Part): number =>
  inside.reduce((area, hole) => area - Math.abs(signedArea(hole)), Math.abs(signedArea(outside)));
