import type { Spot, View } from './nestable.ts';

/** A room to fill, mm. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Copies side by side in one row, or in one column where the view has x and y swapped. */
export interface Row {
  readonly view: View;
  readonly copies: readonly { readonly x: number; readonly y: number; readonly half: boolean }[];
  readonly width: number;
  readonly height: number;
  /** How many such rows the room holds, one above the other. */
  readonly fits: number;
}

/** mm. Dust of doubles that may not cost a copy where parts fill the room exactly. */
export const FIT = 1e-9;
/** More row heights than this are sampled evenly: on huge boards of tiny parts neighbouring heights hardly differ. */
const MOST_HEIGHTS = 40;

/** More copies than this are refused before any are laid; it also bounds a row. */
export const MOST_COPIES = 20_000;

/** How many things of a size stand in a length, `spacing` between them. */
export const countIn = (length: number, size: number, spacing: number): number =>
  Math.max(0, Math.floor((length + spacing + FIT) / (size + spacing)));

/**
 * The best row for each height worth trying. A row alternates upright copies and copies turned by half a turn, each as
 * near its predecessors as the spacing allows. The half-turned ones may stand higher or lower than the upright ones; the
 * offsets tried are those at which a whole number of rows just fills the room, which are the only ones that pay for a
 * convex part: a smaller one gains no row, a larger one loses one. No row grows longer than the copies wanted.
 */
export function rowsFor(view: View, room: Room, spacing: number, wanted: number): Row[] {
  const most = countIn(room.height, view.height, spacing);
  if (most === 0 || room.width + FIT < view.width) return [];
  const layout = { spacing, most: Math.min(wanted, MOST_COPIES) };
  const flat = longest([
    row(view, room, layout, 0, false, false),
    row(view, room, layout, 0, true, false),
    row(view, room, layout, 0, true, true),
  ]);
  const least = Math.ceil(most / 2);
  const step = Math.ceil((most - least + 1) / MOST_HEIGHTS);
  const rows = [flat];
  for (let fits = most; fits >= least; fits -= step) {
    const offset = (room.height + spacing) / fits - spacing - view.height;
    if (offset <= 0) continue;
    const choices = [offset, -offset].flatMap((rise) =>
      [false, true].map((half) => row(view, room, layout, rise, true, half)),
    );
    rows.push(longest(choices));
  }
  return rows;
}

/** Most copies; of those the shortest; the first of equals. */
const longest = (rows: readonly [Row, ...Row[]] | Row[]): Row =>
  rows.reduce((best, other) => {
    const more = other.copies.length - best.copies.length;
    return more > 0 || (more === 0 && other.width < best.width) ? other : best;
  });

interface Layout {
  readonly spacing: number;
  readonly most: number;
}

function row(
  view: View,
  room: Room,
  { spacing, most }: Layout,
  rise: number,
  alternate: boolean,
  startHalf: boolean,
): Row {
  const height = view.height + Math.abs(rise);
  const yOf = (half: boolean): number => (half ? Math.max(0, rise) : Math.max(0, -rise));
  const advances = [false, true].map((first) =>
    [false, true].map((next) => view.advance(first, next, yOf(next) - yOf(first))),
  );
  const furthest = Math.max(...advances.flat());
  const copies: { x: number; y: number; half: boolean }[] = [];
  for (let half = startHalf; copies.length < most; half = alternate ? !half : half) {
    let x = copies.at(-1)?.x ?? 0;
    for (let i = copies.length - 1; i >= 0; i--) {
      const other = copies[i];
      if (other === undefined || other.x + furthest <= x) break;
      x = Math.max(x, other.x + (advances[Number(other.half)]?.[Number(half)] ?? 0));
    }
    if (x + view.width > room.width + FIT) break;
    copies.push({ x, y: yOf(half), half });
  }
  const width = Math.max(0, ...copies.map(({ x }) => x + view.width));
  return { view, copies, width, height, fits: countIn(room.height, height, spacing) };
}

/** The spots of `count` such rows, the first at the lower left of the room, in the room's own frame. */
export const spotsOf = ({ view, copies, height }: Row, count: number, spacing: number): Spot[] =>
  Array.from({ length: count }, (_, i) => i * (height + spacing)).flatMap((up) =>
    copies.map(({ x, y, half }) => {
      const quarters = view.quarters + (half ? 2 : 0);
      return view.swapped ? { x: y + up, y: x, quarters } : { x, y: y + up, quarters };
    }),
  );

/** The room as the view sees it, or a room of the view as the sheet sees it. */
export const seen = (view: View, { width, height }: Room): Room =>
  view.swapped ? { width: height, height: width } : { width, height };
