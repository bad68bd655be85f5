import { bisector } from 'd3';
import type { Point } from '$lib/geometry/point.ts';

/** An upright rectangle of marks, mm. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly front: number;
  readonly back: number;
}

/** Room that is left at marks, and how fast it can change. */
interface Room {
  /** 0 or more where a mark will do. */
  readonly at: (mark: Point) => number;
  /** Whether no mark within `radius` of this one will do: true only where that is certain. */
  readonly hopeless: (mark: Point, radius: number) => boolean;
}

/** How much nearer another mark may be than the one that is found, mm: nobody puts a loudspeaker down closer. */
export const NEAREST_TO = 0.01;
/** Half the size of a rectangle that is not cut up any further, mm: a tenth of that. */
const SMALLEST = 1e-3;
/** More rectangles than this are not looked at: a search that has not ended by then takes a second. */
const MOST_CELLS = 30_000;

interface Cell extends Box {
  /** Its point nearest to where the move starts, and how far that is, mm. */
  readonly nearest: Point;
  readonly away: number;
}

/** Falling. */
const byAway = bisector(({ away }: Cell) => -away);

/**
 * The mark in a box that will do and is nearest to another, within `NEAREST_TO`; null where none will. By branch and bound:
 * the rectangle that might hold the nearest one is cut in four, until what is left is no nearer than what is found, or
 * certainly will not do. Room that is thinner than a thousandth of a millimetre is passed over.
 */
export function leastMove(from: Point, box: Box, { at, hopeless }: Room): Point | null {
  let best: Point | null = null;
  let least = Infinity;
  const take = (mark: Point): void => {
    const away = apart(from, mark);
    if (away < least && at(mark) >= 0) [best, least] = [mark, away];
  };
  // Furthest first, so that the nearest is popped.
  const cells = [cellOf(box, from)];
  for (let looked = 0; looked < MOST_CELLS; looked++) {
    const cell = cells.pop();
    if (!cell || cell.away > least - NEAREST_TO) return best;
    take(cell.nearest);
    const middle: Point = [(cell.left + cell.right) / 2, (cell.front + cell.back) / 2];
    take(middle);
    const radius = apart([cell.left, cell.front], middle);
    if (cell.away >= least || radius < SMALLEST || hopeless(middle, radius)) continue;
    for (const quarter of quarters(cell, middle)) {
      const one = cellOf(quarter, from);
      if (one.away <= least - NEAREST_TO) cells.splice(byAway.left(cells, -one.away), 0, one);
    }
  }
  return best;
}

const apart = (one: Point, other: Point): number => Math.hypot(one[0] - other[0], one[1] - other[1]);

const held = (x: number, from: number, to: number): number => Math.min(to, Math.max(from, x));

function cellOf(box: Box, from: Point): Cell {
  const nearest: Point = [held(from[0], box.left, box.right), held(from[1], box.front, box.back)];
  return { ...box, nearest, away: apart(from, nearest) };
}

const quarters = ({ left, right, front, back }: Box, [x, y]: Point): Box[] => [
  { left, right: x, front, back: y },
  { left: x, right, front, back: y },
  { left, right: x, front: y, back },
  { left: x, right, front: y, back },
];
