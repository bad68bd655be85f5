/**
 * The first whole number from 0 to `count` that passes; null when none does. Over the numbers something goes from failing
 * to passing and may then end for good: each of the two happens once at most.
 *
 * Between a number that fails and one that passes the next is guessed by the straight line through both (regula falsi), and
 * halfway wherever a guess has not halved the stretch: what is asked about is dear, and mostly nearly straight. Where the
 * end comes before anything has passed, and what is left of the way would have to be `STEEPER` than the last of it to get
 * there, none does.
 *
 * @param marginAt How far a number passes (0 or more) or fails (less); null beyond the end.
 */
export function firstPassing(count: number, marginAt: (index: number) => number | null): number | null {
  const first = marginAt(0);
  if (first === null) return null;
  if (first >= 0) return 0;
  const last = marginAt(count);
  if (last !== null && last < 0) return null;
  let fails = { at: 0, margin: first };
  let passes = { at: count, margin: last };
  let slow = false;
  while (passes.at - fails.at > 1) {
    const stretch = passes.at - fails.at;
    const guess =
      slow || passes.margin === null ? fails.at + Math.floor(stretch / 2) : crossing(fails, passes.at, passes.margin);
    const at = Math.min(passes.at - 1, Math.max(fails.at + 1, guess));
    const margin = marginAt(at);
    if (margin !== null && margin < 0) {
      const rise = (margin - fails.margin) / (at - fails.at);
      fails = { at, margin };
      if (passes.margin === null && margin + STEEPER * Math.max(0, rise) * (passes.at - at) < 0) return null;
    } else passes = { at, margin };
    slow = passes.at - fails.at > stretch / 2;
  }
  return passes.margin === null ? null : passes.at;
}

/** How many times steeper: angles of tipping grow about evenly with a margin or a width, a little faster as a lift falls. */
const STEEPER = 4;

/** The first number at or after the place where the line crosses zero. */
const crossing = (fails: { readonly at: number; readonly margin: number }, at: number, margin: number): number =>
  fails.at + Math.ceil((-fails.margin / (margin - fails.margin)) * (at - fails.at));
