import type { Point } from '$lib/geometry/point.ts';
import type { RodHole } from './rods.ts';

export interface Layer {
  readonly slice: readonly Point[];
  /** The slice without its stop: base front, base rear, top rear, top front. */
  readonly core: readonly Point[];
  /** The stretch of the top that a recess may take, rear end first; where it is left out, all that no stop stands on. */
  readonly bare?: readonly [Point, Point];
  readonly rods: readonly RodHole[];
  /** Least wood round the rod holes of the bare slice, where that is known. */
  readonly rodEdge?: number | null;
}
