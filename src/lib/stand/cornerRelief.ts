import type { Path } from '$lib/geometry/contour.ts';
import { relieveCorners } from '$lib/geometry/relieveCorners.ts';
import { asFineMm, says, type Words } from '$lib/project/sentence.ts';

/**
 * mm. By how much a relief's radius is over the bit's: tool-path programs skip an arc of just the bit's radius once an
 * allowance is added. Common practice, no source for the number.
 */
const OVER = 0.1;

/** How many radii wide the end of a slot is that both its corners' reliefs just fit into: each takes √2 of them. */
const TWO = 2 * Math.SQRT2;

/** What the inner corners of a part's outlines need of a router's bit; without one they stay as they are. Lengths in mm. */
export interface CornerRelief {
  /** An outline with its inner corners relieved, where there is room. */
  readonly relieved: (path: Path) => Path;
  /** How far the relief of a square corner reaches into the wood beside it. */
  readonly bite: number;
  /** How far the reliefs at the end of a square slot reach into the wood on either side of it; its width, mm. */
  readonly beside: (slot: number) => number;
  /** How much of the floor and of each wall of a square slot is taken at a corner, so that nothing is glued there, mm. */
  readonly reach: (slot: number) => { readonly floor: number; readonly wall: number };
  /** The radius for the corners of a window, in which nothing has to seat. */
  readonly windowCorner: (asked: number) => number;
  /** What to say of outlines that have been relieved, and of windows with larger corners than asked for. */
  readonly notes: (relieved: boolean, rounded: boolean) => readonly Words[];
}

const NONE: CornerRelief = {
  relieved: (path) => path,
  bite: 0,
  beside: () => 0,
  reach: () => ({ floor: 0, wall: 0 }),
  windowCorner: (asked) => asked,
  notes: () => [],
};

/** @param bit The router bit's diameter; null where parts are cut by something else. */
export function cornerReliefFor(bit: number | null): CornerRelief {
  if (bit === null) return NONE;
  const radius = bit / 2 + OVER;
  const bite = radius * (1 - Math.SQRT1_2);
  return {
    relieved: (path) => relieveCorners(path, radius),
    bite,
    // Too narrow for two of the usual reliefs: half circles in the walls.
    beside: (slot) => (slot > TWO * radius ? bite : radius),
    reach: (slot) =>
      slot > TWO * radius ? { floor: radius * Math.SQRT2, wall: radius * Math.SQRT2 } : { floor: 0, wall: 2 * radius },
    windowCorner: (asked) => Math.max(asked, radius),
    notes: (relieved, rounded) => [
      ...(relieved
        ? [
            says`Inner corners are relieved with a radius of ${asFineMm(radius)} for the router’s bit, so that what is square seats in them: each takes up to ${asFineMm(bite)} of the wood beside a square corner, and in the walls of a slot too narrow for that ${asFineMm(radius)}.`,
          ]
        : []),
      ...(rounded ? [says`The windows’ corners have a radius of ${asFineMm(radius)} for the router’s bit.`] : []),
    ],
  };
}
