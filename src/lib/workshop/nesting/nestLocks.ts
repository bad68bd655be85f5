import { bodyOf, turnsOn, type Problem } from './nestProblem.ts';
import { offcutsOf, spacingFor, usable } from './arrange.ts';
import { radians } from '$lib/geometry/angle.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { byName, sheetsFaultsSteps } from './validity.ts';
import type { Board, Body } from './nestBoard.ts';
import type { Words } from '$lib/project/sentence.ts';
import type { Locked, Stock } from '$lib/project/project.ts';
import type { Part, Placement, Sheet } from '$lib/workshop/part.ts';
import type { Refusal, RefusalReason } from './nestRefusal.ts';
import type { Spaces } from './arrangeFaults.ts';

/** A part held in place that could not be kept there, by its place in the project's list. */
export interface Released extends Refusal {
  readonly index: number;
}

/** Boards with what is held on them, and what could not be held. */
export interface Held {
  readonly boards: readonly Board[];
  readonly released: readonly Released[];
}

/** The placement that a project holds in place. */
export const placementOf = ({ part, x, y, turn }: Locked): Placement => ({ part, x, y, turn: radians(turn) });

/**
 * The parts of one stock that are held in place, each kept if it still fits: its part exists in this number, its turn goes with
 * the grain, its sheet is there, and it keeps margin and spacing to those before it in the list.
 */
export function* heldBoards(
  problem: Problem,
  parts: readonly Part[],
  cutter: Spaces,
  all: readonly Locked[],
): Generator<undefined, Held> {
  const apart = spacingFor(
    problem.items.map(({ part }) => part),
    problem.stock,
    problem.index,
    cutter,
  );
  const spacing = apart.ok ? apart.value : cutter.spacing;
  const sheets = new Map<string, Sheet>();
  const bodies = new Map<string, Body[]>();
  const released: Released[] = [];
  for (const [index, locked] of all.entries()) {
    if (!isOf(problem.stock, parts, locked)) continue;
    const key = `${locked.offcut} ${locked.sheet}`;
    const sheet = sheets.get(key) ?? emptySheet(problem.stock, locked);
    const laid = [...sheets.values()].flatMap(({ placements }) => placements);
    const body = bodyOf(placementOf(locked), problem, true);
    const refusal =
      sheet === null ? noSheet(problem.stock, locked) : yield* refusalOf(locked, sheet, laid, problem, spacing);
    if (refusal !== null || sheet === null || body === null) {
      released.push({ index, ...(refusal ?? refuse('no-part', `expected a part named "${locked.part}", got none`)) });
      continue;
    }
    sheets.set(key, { ...sheet, placements: [...sheet.placements, placementOf(locked)] });
    bodies.set(key, [...(bodies.get(key) ?? []), body]);
  }
  const boards = [...sheets].map(([key, sheet]): Board => ({
    number: sheet.number,
    offcut: sheet.offcut ?? false,
    room: usable(sheet, problem.margin),
    bodies: bodies.get(key) ?? [],
  }));
  return { boards, released };
}

/** Held parts that no stock's parts speak of: reported once, for the whole. */
export const unknownParts = (parts: readonly Part[], all: readonly Locked[]): Released[] =>
  all.flatMap((locked, index) =>
    parts.some(({ name }) => name === locked.part)
      ? []
      : [{ index, ...refuse('no-part', `expected a part named "${locked.part}", got none`) }],
  );

const isOf = (stock: Stock, parts: readonly Part[], { part }: Locked): boolean =>
  parts.some(({ name, stock: own }) => name === part && own === stock.name);

const refuse = (reason: RefusalReason, message: Words): Refusal => ({ reason, message });

function emptySheet(stock: Stock, { sheet: number, offcut }: Locked): Sheet | null {
  if (!offcut && stock.sheets !== null && number > stock.sheets) return null;
  const size = offcut ? offcutsOf(stock)[number - 1] : stock.sheet;
  if (size === undefined) return null;
  const { width, height } = size;
  const sheet = { stock: stock.name, number, width, height, placements: [], fill: 0 };
  return offcut ? { ...sheet, offcut } : sheet;
}

function noSheet(stock: Stock, { sheet, offcut }: Locked): Refusal {
  const there = offcut ? offcutsOf(stock).length : (stock.sheets ?? 0);
  return refuse(
    'no-sheet',
    `expected one of ${there} ${offcut ? 'offcuts' : 'sheets'} of "${stock.name}", got number ${sheet}`,
  );
}

function* refusalOf(
  locked: Locked,
  sheet: Sheet,
  laid: readonly Placement[],
  problem: Problem,
  spacing: number,
): Generator<undefined, Refusal | null> {
  const item = problem.items.find(({ part }) => part.name === locked.part);
  const held = laid.filter(({ part }) => part === locked.part).length;
  const quantity = item?.part.quantity ?? 0;
  if (held >= quantity)
    return refuse('too-many', `expected at most ${quantity} of part "${locked.part}", got ${held + 1}`);
  if (!turnsOn(problem.stock).includes(locked.turn / 90)) {
    return refuse('grain', `expected part "${locked.part}" along the grain, got a turn of ${locked.turn}°`);
  }
  return yield* placeRefusalSteps(
    sheet,
    placementOf(locked),
    problem.items.map(({ part }) => part),
    spacing,
    problem.margin,
  );
}

/** Why a placement cannot be added to a sheet: too near its edge, or to something on it. Null when it can. */
export const placeRefusal = (...given: Parameters<typeof placeRefusalSteps>): Refusal | null =>
  toTheEnd(placeRefusalSteps(...given));

function* placeRefusalSteps(
  sheet: Sheet,
  placement: Placement,
  parts: readonly Part[],
  spacing: number,
  margin: number,
): Generator<undefined, Refusal | null> {
  const [edge] = yield* sheetsFaultsSteps([{ ...sheet, placements: [placement] }], parts, spacing, margin);
  if (edge !== undefined) return refuse('margin', edge.message);
  const together = { ...sheet, placements: [placement, ...sheet.placements] };
  const [near] = yield* sheetsFaultsSteps([together], parts, spacing, margin, byName);
  return near === undefined ? null : refuse('overlap', near.message);
}
