import { rootBetween } from '$lib/geometry/root.ts';

/** All numbers from … to, both among them. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Where a continuous function is 0 or more, its ends as exact as doubles are. Looked at in the places given, in rising
 * order: what begins and ends between two of them is passed over.
 */
export function spansWhere(f: (x: number) => number, places: readonly number[]): Span[] {
  const spans: Span[] = [];
  let from: number | null = null;
  let before: { x: number; value: number } | null = null;
  for (const x of places) {
    const value = f(x);
    if (value >= 0 && from === null) from = before ? holdingEnd(f, x, before.x) : x;
    if (value < 0 && from !== null && before) {
      spans.push({ from, to: holdingEnd(f, before.x, x) });
      from = null;
    }
    before = { x, value };
  }
  if (from !== null && before) spans.push({ from, to: before.x });
  return spans;
}

/** The last place from one that holds towards one that does not. Rounding may put the root itself a hair outside. */
function holdingEnd(f: (x: number) => number, holds: number, fails: number): number {
  const root = rootBetween(f, Math.min(holds, fails), Math.max(holds, fails)) ?? holds;
  if (f(root) >= 0) return root;
  const inwards = root + (holds - root) * HAIR;
  return f(inwards) >= 0 ? inwards : holds;
}

/** Part of the way from a root back to where it holds. */
const HAIR = 1e-9;

/** Numbers from … to in steps of at most `step`, both ends among them. */
export function stepsOf({ from, to }: Span, step: number): number[] {
  const count = Math.max(1, Math.ceil((to - from) / step));
  return Array.from({ length: count + 1 }, (_, i) => (i === count ? to : from + ((to - from) * i) / count));
}

/** What of a span lies in another; null where nothing does. */
export function common(one: Span, other: Span): Span | null {
  const [from, to] = [Math.max(one.from, other.from), Math.min(one.to, other.to)];
  return from <= to ? { from, to } : null;
}

/** The number in one of some spans that is nearest to `x`; null where there are none. */
export function nearestIn(spans: readonly Span[], x: number): number | null {
  const held = spans.map(({ from, to }) => Math.min(to, Math.max(from, x)));
  return held.reduce<number | null>(
    (best, one) => (best === null || Math.abs(one - x) < Math.abs(best - x) ? one : best),
    null,
  );
}

/** How far a number lies inside the nearest of some spans; negative: how far outside of all. */
export const depthIn = (spans: readonly Span[], x: number): number =>
  spans.reduce((most, { from, to }) => Math.max(most, Math.min(x - from, to - x)), -Infinity);
