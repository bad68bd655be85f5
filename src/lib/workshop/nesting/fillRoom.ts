import { fillWithBoxes } from './boxFill.ts';
import { countIn, FIT, rowsFor, seen, spotsOf, type Room, type Row } from './rows.ts';
import { largestSplit, moved, stripsOf, type Filled, type Strip } from './strips.ts';
import type { Nestable } from './nestable.ts';

/** Strips beside and above the rows are filled in turn, this deep. */
const DEPTH = 2;
/** Rows left out to make room for a strip of turned copies: more never paid in trials on wedges and triangles. */
const MOST_LEFT_OUT = 3;
/**
 * Copies laid on trial in one filling, after which strips are no longer looked into: near a twentieth of a second, and
 * far beyond what a stand's slices need on a common board. Counted in copies so that every machine gives one answer.
 */
const BUDGET = 30_000;
/** What trying one height of row costs before its first copy, in copies. */
const ROW_COST = 8;

interface Search {
  readonly item: Nestable;
  readonly spacing: number;
  readonly wanted: number;
  readonly found: Map<string, Filled>;
  budget: number;
}

/**
 * As many copies of one part as these methods get into a room, none nearer another than the spacing, but no more than
 * wanted: rows or columns of one kind, then the strips left beside and above them in the same manner; or the same with
 * boxes of one copy or two, where those hold more. Deterministic. Pauses after each kind of row that is tried.
 */
export function* fillRoom(item: Nestable, room: Room, spacing: number, wanted: number): Generator<undefined, Filled> {
  const search = { item, spacing, wanted, found: new Map(), budget: BUDGET };
  const { spots, free } = yield* fill(search, room, DEPTH);
  const rows = { spots: spots.slice(0, wanted), free };
  if (rows.spots.length >= Math.min(wanted, atMost(search, room))) return rows;
  const boxes = fillWithBoxes(item, room, spacing, wanted);
  return boxes.spots.length > rows.spots.length ? boxes : rows;
}

function* fill(search: Search, room: Room, depth: number): Generator<undefined, Filled> {
  if (atMost(search, room) === 0) return { spots: [], free: [{ ...room, x: 0, y: 0 }] };
  const key = [room.width.toFixed(6), room.height.toFixed(6), depth].join();
  const known = search.found.get(key);
  if (known !== undefined) return known;
  const rows = yield* rowsIn(search, room);
  let best = bare(search, room, rows[0]);
  if (depth > 0) for (const row of rows) best = yield* withStrips(search, room, row, depth, best);
  search.found.set(key, best);
  return best;
}

/** The copies wanted in rows of one kind alone. */
function bare({ wanted, spacing }: Search, room: Room, row: Row | undefined): Filled {
  if (row === undefined) return { spots: [], free: [] };
  const count = Math.min(row.fits, Math.ceil(wanted / row.copies.length));
  return { spots: spotsOf(row, count, spacing), free: largestSplit(stripsOf(row, count, room, spacing)) };
}

/** Every row worth trying, those that fill the room best first, so that the search for strips soon has a bound. */
function* rowsIn(search: Search, room: Room): Generator<undefined, Row[]> {
  const { item, spacing, wanted } = search;
  const rows: Row[] = [];
  for (const view of item.views) {
    rows.push(...rowsFor(view, seen(view, room), spacing, wanted));
    yield;
  }
  search.budget -= rows.reduce((sum, { copies }) => sum + ROW_COST + copies.length, 0);
  return rows.sort((a, b) => b.fits * b.copies.length - a.fits * a.copies.length);
}

/** The better of `best` and these rows, or a few less of them, with the strips beside and above them filled. */
function* withStrips(search: Search, room: Room, row: Row, depth: number, best: Filled): Generator<undefined, Filled> {
  let winner = best;
  for (let count = row.fits; count >= 1 && count >= row.fits - MOST_LEFT_OUT; count--) {
    for (const strips of stripsOf(row, count, room, search.spacing)) {
      if (search.budget <= 0 || winner.spots.length >= search.wanted) return winner;
      const rows = count * row.copies.length;
      const bound = strips.reduce((sum, strip) => sum + atMost(search, strip), rows);
      if (bound <= winner.spots.length) continue;
      const more: { strip: Strip; filled: Filled }[] = [];
      for (const strip of strips) more.push({ strip, filled: yield* fill(search, strip, depth - 1) });
      if (more.reduce((sum, { filled }) => sum + filled.spots.length, rows) <= winner.spots.length) continue;
      winner = {
        spots: [
          ...spotsOf(row, count, search.spacing),
          ...more.flatMap(({ strip, filled }) => moved(filled.spots, strip)),
        ],
        free: more.flatMap(({ strip, filled }) => moved(filled.free, strip)),
      };
    }
  }
  return winner;
}

/** No layout of a room holds more: by size and by area (each copy claims half the spacing round it). */
function atMost({ item, spacing }: Search, { width, height }: Room): number {
  const fits = item.views.some((view) => {
    const room = seen(view, { width, height });
    return countIn(room.width, view.width, spacing) > 0 && countIn(room.height, view.height, spacing) > 0;
  });
  return fits ? Math.floor(((width + spacing) * (height + spacing)) / item.claim + FIT) : 0;
}
