/** One copy in a rectangle: the lower left corner of its bounding box, and how many quarter turns it has made. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly quarters: number;
}

/**
 * A part as seen when rows are laid: at some turn, or mirrored in the diagonal so that columns can be laid as rows. Its
 * copies stand upright or turned by half a turn, each with the lower left of its bounding box as its place.
 */
export interface View {
  readonly width: number;
  readonly height: number;
  /** Quarter turns of the upright copy. */
  readonly quarters: number;
  /** Whether x and y have changed places. */
  readonly swapped: boolean;
  /** How far right of a copy the next one at the same turn and height must stand to be clear of it. */
  readonly step: number;
  /**
   * How far right of an upright copy a half-turned one, `rise` mm higher, must stand to be clear of it; −Infinity:
   * anywhere. With `halfFirst` the upright copy follows the half-turned one.
   */
  readonly advance: (halfFirst: boolean, rise: number) => number;
}

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
  if (wanted === 1) return [single(view, most)];
  const longestRow = Math.min(wanted, MOST_COPIES);
  const upright = row(view, room, spacing, noTurns(view, longestRow), false);
  const rows = [longest(upright, ...alternating(view, room, spacing, 0, longestRow))];
  const least = Math.ceil(most / 2);
  const step = Math.ceil((most - least + 1) / MOST_HEIGHTS);
  for (let fits = most; fits >= least; fits -= step) {
    const offset = (room.height + spacing) / fits - spacing - view.height;
    if (offset <= 0) continue;
    const [first, ...others] = [offset, -offset].flatMap((rise) => alternating(view, room, spacing, rise, longestRow));
    if (first !== undefined) rows.push(longest(first, ...others));
  }
  return rows;
}

/** Rows of one copy each: of those the upright one is lowest, and no other is narrower. */
const single = (view: View, fits: number): Row => ({
  view,
  copies: [{ x: 0, y: 0, half: false }],
  width: view.width,
  height: view.height,
  fits,
});

/** Most copies; of those the shortest; the first of equals. */
const longest = (first: Row, ...others: readonly Row[]): Row =>
  others.reduce((best, other) => {
    const more = other.copies.length - best.copies.length;
    return more > 0 || (more === 0 && other.width < best.width) ? other : best;
  }, first);

/** What a row is laid by. */
interface Pattern {
  readonly alternate: boolean;
  /** How much higher half-turned copies stand than upright ones, mm; negative: lower. */
  readonly rise: number;
  /** Advance from an upright copy to a half-turned one, and the other way round, mm. */
  readonly toHalf: number;
  readonly fromHalf: number;
  readonly most: number;
}

const noTurns = (view: View, most: number): Pattern => ({
  alternate: false,
  rise: 0,
  toHalf: view.step,
  fromHalf: view.step,
  most,
});

function alternating(view: View, room: Room, spacing: number, rise: number, most: number): Row[] {
  const [toHalf, fromHalf] = [view.advance(false, rise), view.advance(true, -rise)];
  const pattern = { alternate: true, rise, toHalf, fromHalf, most };
  return [false, true].map((startHalf) => row(view, room, spacing, pattern, startHalf));
}

function row(view: View, room: Room, spacing: number, pattern: Pattern, startHalf: boolean): Row {
  const { alternate, rise, toHalf, fromHalf, most } = pattern;
  const furthest = Math.max(view.step, toHalf, fromHalf);
  const copies: { x: number; y: number; half: boolean }[] = [];
  for (let half = startHalf; copies.length < most; half = alternate ? !half : half) {
    let x = copies.at(-1)?.x ?? 0;
    for (let i = copies.length - 1; i >= 0; i--) {
      const other = copies[i];
      if (other === undefined || other.x + furthest <= x) break;
      const advance = other.half === half ? view.step : half ? toHalf : fromHalf;
      x = Math.max(x, other.x + advance);
    }
    if (x + view.width > room.width + FIT) break;
    copies.push({ x, y: Math.max(0, half ? rise : -rise), half });
  }
  const width = Math.max(0, (copies.at(-1)?.x ?? 0) + view.width);
  const height = view.height + Math.abs(rise);
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
