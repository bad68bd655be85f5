import { degrees } from '$lib/geometry/angle.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { finishedArea, partsOf, spacingFor } from './arrange.ts';
import { placedContour } from './placed.ts';
import { placeRefusal, placementOf } from './nestLocks.ts';
import { turnsOn } from './nestProblem.ts';
import type { Locked, Stock } from '$lib/project/project.ts';
import type { Part, Placement, Sheet } from '$lib/workshop/part.ts';
import type { Refusal } from './nestRefusal.ts';
import type { Spaces } from './arrangeFaults.ts';

/** What a move by hand must keep to. */
export interface Bench {
  readonly parts: readonly Part[];
  readonly stocks: readonly Stock[];
  readonly cutter: Spaces;
}

/** One placement, by the place of its sheet and its own place on it. */
export interface Which {
  readonly sheet: number;
  readonly placement: number;
}

/** The sheets after a move, and where the part now is; or why it goes back to where it was. */
export type Moved =
  | { readonly ok: true; readonly sheets: readonly Sheet[]; readonly which: Which }
  | { readonly ok: false; readonly refusal: Refusal };

/** A part moved so that its origin lies at (x, y) mm of a sheet: its own or another of its stock. It must fit there. */
export function movePlacement(
  sheets: readonly Sheet[],
  which: Which,
  to: { readonly sheet: number; readonly x: number; readonly y: number },
  bench: Bench,
): Moved {
  const placement = sheets[which.sheet]?.placements[which.placement];
  if (placement === undefined) return nothingThere;
  return put(sheets, which, to.sheet, { ...placement, x: to.x, y: to.y }, bench);
}

/** A part turned counter-clockwise about the middle of its bounding box, to the next turn that the grain allows. */
export function turnPlacement(sheets: readonly Sheet[], which: Which, bench: Bench): Moved {
  const sheet = sheets[which.sheet];
  const placement = sheet?.placements[which.placement];
  const part = bench.parts.find(({ name }) => name === placement?.part);
  const stock = bench.stocks.find(({ name }) => name === sheet?.stock);
  if (placement === undefined || part === undefined || stock === undefined) return nothingThere;
  const turns = turnsOn(stock);
  const now = turns.indexOf(Math.round(degrees(placement.turn) / 90));
  const turn = ((turns[(now + 1) % turns.length] ?? 0) * Math.PI) / 2;
  const before = extentOf(placedContour(part.outside, placement));
  const after = extentOf(placedContour(part.outside, { ...placement, turn }));
  const x = placement.x + (before.left + before.right - after.left - after.right) / 2;
  const y = placement.y + (before.bottom + before.top - after.bottom - after.top) / 2;
  return put(sheets, which, which.sheet, { ...placement, x, y, turn }, bench);
}

const nothingThere: Moved = {
  ok: false,
  refusal: { reason: 'no-part', message: 'expected a part on the sheet, got none' },
};

function put(sheets: readonly Sheet[], which: Which, to: number, placement: Placement, bench: Bench): Moved {
  const [from, target] = [sheets[which.sheet], sheets[to]];
  const index = bench.stocks.findIndex(({ name }) => name === from?.stock);
  const stock = bench.stocks[index];
  if (from === undefined || stock === undefined || target?.stock !== from.stock) return noSheet(from);
  const own = partsOf(bench.parts, stock);
  const apart = spacingFor(own, stock, index, bench.cutter);
  const spacing = apart.ok ? apart.value : bench.cutter.spacing;
  const lifted = without(sheets, which, own);
  const free = lifted[to] ?? target;
  const refusal = placeRefusal(free, placement, own, spacing, bench.cutter.margin);
  if (refusal !== null) return { ok: false, refusal };
  // On its own sheet a part keeps its place in the list, so that whoever holds it does not lose it.
  const at = to === which.sheet ? which.placement : free.placements.length;
  const next = lifted.with(to, filled(free, free.placements.toSpliced(at, 0, placement), own));
  return { ok: true, sheets: next, which: { sheet: to, placement: at } };
}

const noSheet = (from: Sheet | undefined): Moved => ({
  ok: false,
  refusal: { reason: 'no-sheet', message: `expected a sheet of "${from?.stock ?? ''}", got another or none` },
});

const without = (sheets: readonly Sheet[], { sheet, placement }: Which, parts: readonly Part[]): Sheet[] =>
  sheets.map((one, i) => (i === sheet ? filled(one, one.placements.toSpliced(placement, 1), parts) : one));

/** A sheet with other placements on it, and their fill. */
function filled(sheet: Sheet, placements: readonly Placement[], parts: readonly Part[]): Sheet {
  const areas = new Map(parts.map((part) => [part.name, finishedArea(part)]));
  const used = placements.reduce((sum, { part }) => sum + (areas.get(part) ?? 0), 0);
  return { ...sheet, placements, fill: used / (sheet.width * sheet.height) };
}

/** What a project keeps of a placement that is held in place. */
export function lockOf({ number, offcut = false }: Sheet, { part, x, y, turn }: Placement): Locked {
  const quarters = Math.round(degrees(turn) / 90);
  const [none, quarter, half] = [0, 90, 180] as const;
  return {
    part,
    sheet: number,
    offcut,
    x,
    y,
    turn: quarters === 0 ? none : quarters === 1 ? quarter : quarters === 2 ? half : 270,
  };
}

/** The place in the list of the lock that holds a placement; −1 for one that nothing holds. */
export const lockIndex = (locked: readonly Locked[], { number, offcut = false }: Sheet, placement: Placement): number =>
  locked.findIndex((lock) => {
    const held = placementOf(lock);
    const near = Math.abs(held.x - placement.x) + Math.abs(held.y - placement.y) < SAME;
    return lock.sheet === number && lock.offcut === offcut && held.part === placement.part && near;
  });

/** mm. A held part is written and read back without being rounded; this is the dust of adding and taking off margins. */
const SAME = 1e-6;
