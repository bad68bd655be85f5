import { fillRoom } from './fillRoom.ts';
import { largestSplit, moved, stripsOf, swap, type Filled, type Strip } from './strips.ts';
import { rowsFor, seen, spotsOf, type Room, type Row } from './rows.ts';
import { fitsRoom, type Nestable } from './nestable.ts';
import type { Spot } from './rows.ts';

/** A sheet being filled: who stands where, and the rooms still empty. Frame: the usable part of the sheet. */
export interface Board {
  readonly copies: { readonly item: Nestable; readonly spot: Spot }[];
  free: Strip[];
  /** The how manieth offcut, from 1; null for a whole sheet. */
  readonly offcut: number | null;
}

/**
 * All copies of all parts on as few boards as this method finds; more than `most` whole sheets: null, before they are
 * laid. The offcuts are filled first, in their order. Then each part fills whole boards; what is left of it goes into the
 * rooms that earlier boards have free, and then on a board of its own, in a strip as narrow as holds it, so that the next
 * part finds the rest of the board in one piece. Larger parts go first. Every part must fit the room.
 */
export function* shareBoards(
  items: readonly Nestable[],
  room: Room,
  spacing: number,
  most: number,
  offcuts: readonly Room[] = [],
): Generator<undefined, Board[] | null> {
  const pieces = offcuts.map((offcut, i) => emptyBoard(offcut, i + 1));
  const whole: Board[] = [];
  const newBoard = (): Board => {
    const board = emptyBoard(room, null);
    whole.push(board);
    return board;
  };
  const bySize = [...items].sort((a, b) => b.width * b.height - a.width * a.height);
  for (const item of bySize) {
    let left = item.part.quantity - (yield* placeMany(pieces, item, spacing, item.part.quantity));
    if (left === 0) continue;
    const full = yield* fillRoom(item, room, spacing, left);
    const filled = full.spots.length < left ? Math.floor(left / full.spots.length) : 0;
    if (!(whole.length + filled <= most)) return null;
    for (let i = 0; i < filled; i++) put(newBoard(), 0, item, full);
    left -= filled * full.spots.length;
    while (left > 0) {
      left -= (yield* placeSome(whole, item, spacing, left)) || (yield* placeSome([newBoard()], item, spacing, left));
      if (whole.length > most) return null;
    }
  }
  return [...pieces.filter(({ copies }) => copies.length > 0), ...whole];
}

const emptyBoard = (room: Room, offcut: number | null): Board => ({
  copies: [],
  free: [{ ...room, x: 0, y: 0 }],
  offcut,
});

/** As many copies as the boards take, one room after the other; says how many. */
function* placeMany(
  boards: readonly Board[],
  item: Nestable,
  spacing: number,
  wanted: number,
): Generator<undefined, number> {
  let placed = 0;
  for (let more = 1; more > 0 && placed < wanted; placed += more) {
    more = yield* placeSome(boards, item, spacing, wanted - placed);
  }
  return placed;
}

/** Places all copies in the first room that takes them all in one strip, else some in the first that takes any. */
function* placeSome(
  boards: readonly Board[],
  item: Nestable,
  spacing: number,
  wanted: number,
): Generator<undefined, number> {
  const fillings = [stripFor, fillRoom];
  for (const filling of fillings) {
    for (const board of boards) {
      for (const [i, room] of board.free.entries()) {
        if (!fitsRoom(item, room)) continue;
        const filled = yield* filling(item, room, spacing, wanted);
        if (filled === null || filled.spots.length === 0) continue;
        put(board, i, item, filled);
        return filled.spots.length;
      }
    }
  }
  return 0;
}

/** Puts copies into a free room of a board; the rooms that stay free within it take its place. */
function put(board: Board, roomIndex: number, item: Nestable, filled: Filled): void {
  const room = board.free[roomIndex];
  if (room === undefined) return;
  board.copies.push(...moved(filled.spots, room).map((spot) => ({ item, spot })));
  const rest = moved(filled.free, room).filter(({ width, height }) => width > 0 && height > 0);
  board.free.splice(roomIndex, 1, ...rest);
}

/** All copies wanted in rows or columns across a room, on the least of it; null when rows of one kind do not hold them. */
function* stripFor(item: Nestable, room: Room, spacing: number, wanted: number): Generator<undefined, Filled | null> {
  let best: { row: Row; count: number; area: number } | null = null;
  for (const view of item.views) {
    for (const row of rowsFor(view, seen(view, room), spacing, wanted)) {
      const count = Math.ceil(wanted / row.copies.length);
      if (count > row.fits) continue;
      const area = (count * (row.height + spacing) - spacing) * seen(row.view, room).width;
      if (best === null || area < best.area) best = { row, count, area };
    }
    yield;
  }
  if (best === null) return null;
  const { row, count } = best;
  const spots = spotsOf(row, count, spacing).slice(0, wanted);
  return {
    spots,
    free: [...lastRowRest(row, count, spacing, wanted), ...largestSplit(stripsOf(row, count, room, spacing))],
  };
}

/** The empty end of the last row when it is not full. */
function lastRowRest(row: Row, count: number, spacing: number, wanted: number): Strip[] {
  const inLast = wanted - (count - 1) * row.copies.length;
  if (inLast === row.copies.length) return [];
  const end = Math.max(...row.copies.slice(0, inLast).map(({ x }) => x + row.view.width)) + spacing;
  const y = (count - 1) * (row.height + spacing);
  const rest = { x: end, y, width: row.width - end, height: row.height };
  return [row.view.swapped ? swap(rest) : rest];
}
