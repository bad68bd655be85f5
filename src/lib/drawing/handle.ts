import type { Point } from '$lib/geometry/point.ts';
import type { Range } from '$lib/project/range.ts';
import type { Thing } from './thing.ts';

/** What moving a handle along one axis of its view changes. */
export interface Grip {
  /** JSON pointer of the number. */
  readonly input: string;
  /** As the project holds it, mm. */
  readonly value: number;
  /** Change of the number for each mm along the axis: 2 for the width of what grows to both sides. */
  readonly rate: number;
  readonly range: Range;
  /** What follows the number in a sentence: `from the desk’s front edge`. */
  readonly says: string;
  /** −1 where people call the negative by its size: a mark to the left of the middle. */
  readonly sign: 1 | -1;
  /** Values worth keeping to, as the project holds them. */
  readonly align: readonly number[];
}

/** Something on a view that can be taken hold of and moved. */
export interface Handle {
  /** Unique in the view, and stable from plan to plan. */
  readonly id: string;
  readonly thing: Thing;
  readonly name: string;
  /** Where it is held, in the view's plane. */
  readonly at: Point;
  /** Along the view's first axis and along its second; null where it stays. */
  readonly across: Grip | null;
  readonly up: Grip | null;
  /** Its outline, or the two ends of an edge. */
  readonly body: readonly Point[];
}
