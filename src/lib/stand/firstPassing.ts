interface Asked {
  readonly at: number;
  readonly margin: number;
}
/** A number that passes, or one beyond the end: null. */
interface Passing {
  readonly at: number;
  readonly margin: number | null;
}

/**
 * The first whole number from 0 to `count` that passes; null when none does. Over the numbers something goes from failing
 * to passing and may then end for good: each of the two happens once at most. What is asked about is dear.
 *
 * @param marginAt How far a number passes (0 or more) or fails (less); null beyond the end.
 * @param likely Where it may be, if anything tells: asked first, and then ever further from there.
 */
export function firstPassing(
  count: number,
  marginAt: (index: number) => number | null,
  likely: number | null = null,
): number | null {
  const first = marginAt(0);
  if (first === null) return null;
  if (first >= 0) return 0;
  const fails = { at: 0, margin: first };
  if (likely === null || likely <= 0) return between(fails, { at: count, margin: marginAt(count) }, marginAt);
  const start = Math.min(likely, count);
  const margin = marginAt(start);
  if (margin !== null && margin < 0) return upwards({ at: start, margin }, count, marginAt);
  return margin === null
    ? between(fails, { at: start, margin }, marginAt)
    : downwards(fails, { at: start, margin }, marginAt);
}

/** How many times longer a step away from a likely number is than the last one, where that told nothing; and at most. */
const LONGER = 4;
const LONGEST = 64;

/** How far to go on from a number, after a step that changed its margin by so much, for the margin to be used up. */
const stepFor = (margin: number, change: number, last: number): number =>
  change > 0 ? Math.min(LONGEST * last, Math.ceil((Math.abs(margin) * last) / change)) : LONGER * last;

function upwards(from: Asked, count: number, marginAt: (index: number) => number | null): number | null {
  let fails = from;
  let step = 1;
  while (fails.at < count) {
    const at = Math.min(count, fails.at + step);
    const margin = marginAt(at);
    if (margin === null || margin >= 0) return between(fails, { at, margin }, marginAt);
    step = stepFor(margin, margin - fails.margin, step);
    fails = { at, margin };
  }
  return null;
}

function downwards(lowest: Asked, from: Asked, marginAt: (index: number) => number | null): number | null {
  let passes = from;
  let step = 1;
  while (passes.at - step > lowest.at) {
    const at = passes.at - step;
    const margin = marginAt(at);
    if (margin === null) break;
    if (margin < 0) return between({ at, margin }, passes, marginAt);
    step = Math.max(1, stepFor(margin, passes.margin - margin, step));
    passes = { at, margin };
  }
  return between(lowest, passes, marginAt);
}

/**
 * Between a number that fails and one that passes the next is guessed by the straight line through both, an end that stays
 * in place taken at half its margin (regula falsi, Illinois variant): margins are mostly nearly straight. It is halfway where
 * two guesses have not halved the stretch, and where margins go in steps, as with the layers of a stack. Where the end comes before anything has passed, and what is left of the way
 * would have to be `STEEPER` than the last of it to get there, none does.
 */
function between(from: Asked, to: Passing, marginAt: (index: number) => number | null): number | null {
  if (to.margin !== null && to.margin < 0) return null;
  /** `pull` is the margin that the line is drawn through. */
  let fails = { ...from, pull: from.margin };
  let passes = { ...to, pull: to.margin };
  let [slow, before]: [number, 'fails' | 'passes' | null] = [0, null];
  while (passes.at - fails.at > 1) {
    const stretch = passes.at - fails.at;
    const [low, high] = [fails.margin, passes.margin];
    const halfway = slow > 1 || passes.pull === null;
    const guess = halfway ? fails.at + Math.floor(stretch / 2) : crossing(fails, passes.at, passes.pull ?? 0);
    const at = Math.min(passes.at - 1, Math.max(fails.at + 1, guess));
    const margin = marginAt(at);
    if (margin !== null && margin < 0) {
      const rise = (margin - fails.margin) / (at - fails.at);
      fails = { at, margin, pull: margin };
      if (passes.margin === null && margin + STEEPER * Math.max(0, rise) * (passes.at - at) < 0) return null;
      if (before === 'fails' && passes.pull !== null) passes.pull /= 2;
      before = 'fails';
    } else {
      passes = { at, margin, pull: margin };
      if (before === 'passes') fails.pull /= 2;
      before = 'passes';
    }
    const level = margin === low || margin === high;
    slow = level ? 2 : !halfway && passes.at - fails.at > stretch / 2 ? slow + 1 : 0;
  }
  return passes.margin === null ? null : passes.at;
}

/** How many times steeper: angles of tipping grow about evenly with a margin or a width, a little faster as a lift falls. */
const STEEPER = 4;

/** The first number at or after the place where the line crosses zero. */
const crossing = (fails: { readonly at: number; readonly pull: number }, at: number, pull: number): number =>
  fails.at + Math.ceil((-fails.pull / (pull - fails.pull)) * (at - fails.at));
