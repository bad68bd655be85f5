import type { Point } from '$lib/geometry/point.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Room } from './rows.ts';
import type { Shape } from './nestShapes.ts';

/** A part as nesting sees it. */
export interface Item {
  readonly part: Part;
  /** At each turn allowed to it. */
  readonly shapes: readonly Shape[];
  /** The same without those that look like an earlier one: what is worth trying. */
  readonly tried: readonly Shape[];
  /** Wood that one copy takes at the very least, its share of the spacing included, mm². */
  readonly claim: number;
}

/** One copy on a board: the lower left of its bounding box, from the lower left of what the margin leaves of the board. */
export interface Body {
  readonly item: Item;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
  /** Held where it is by hand. */
  readonly fixed: boolean;
  /** Where it is held, from the sheet's lower left: reckoned back from x and y it would gather dust. */
  readonly held?: Point;
}

/** One board with its copies. */
export interface Board {
  /** What the margin leaves of it. */
  readonly room: Room;
  /** 1, 2, 3… among the whole sheets or among the offcuts. */
  readonly number: number;
  readonly offcut: boolean;
  readonly bodies: readonly Body[];
}

/** What the bodies of a board claim, mm². */
export const claimOf = (bodies: readonly Body[]): number => bodies.reduce((sum, { item }) => sum + item.claim, 0);
