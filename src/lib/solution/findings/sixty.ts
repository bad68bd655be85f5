import { degrees } from '$lib/geometry/angle.ts';
import { rootBetween } from '$lib/geometry/root.ts';
import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { triangleOf, type Triangle } from '$lib/layout/triangle.ts';
import { listener } from '$lib/project/fields/listener.ts';
import { toTape } from '$lib/project/tape.ts';
import { asMm, says, type Sentence } from '$lib/project/sentence.ts';
import type { Case } from './proposal.ts';
import { changedLayout, type LayoutChange } from './suggestion.ts';

const WANTED = 60;
/** How far marks and seat are moved for a better triangle, mm. */
const FURTHEST = 600;

/** The listening triangle with a change of the layout; null where nothing can be aimed. */
export function triangleWith(
  {
    of: {
      project: { speaker },
      layout,
    },
  }: Case,
  change: LayoutChange,
): Triangle | null {
  const there = changedLayout(layout, change);
  const [left, right] = [placeSide(speaker, there, 'left'), placeSide(speaker, there, 'right')];
  if (!left.ok || !right.ok) return null;
  return triangleOf(left.value.aimedPoint, right.value.aimedPoint, headOf(there.listener, there.desk));
}

/** How far the angle at the head is over 60° with a change of the layout, degrees; NaN where nothing can be aimed. */
export function overSixty(of: Case, change: LayoutChange): number {
  const triangle = triangleWith(of, change);
  return triangle ? degrees(triangle.angle) - WANTED : NaN;
}

/** A change with the seat moved besides, by so much further back, mm, to a place that the tape shows and where the angle is 60°; null when there is none. */
export function withSeat(
  of: Case,
  change: LayoutChange,
): { readonly by: number; readonly change: LayoutChange } | null {
  const { setback: now } = of.of.layout.listener;
  const seat = (setback: number): LayoutChange => ({ ...change, listener: { ...change.listener, setback } });
  const rest = vanishing((by) => overSixty(of, seat(now + by)));
  if (rest === null) return null;
  const setback = toTape(now + rest, of.of.project.display);
  if (setback < listener.setback.min || setback > listener.setback.max) return null;
  return setback === now ? { by: 0, change } : { by: setback - now, change: seat(setback) };
}

/** What to say of a seat that is moved so much further back, mm. */
export const sitText = (by: number): Sentence => says`sit ${asMm(Math.abs(by))} ${by > 0 ? 'further back' : 'nearer'}`;

/** The way that makes a difference vanish, the shorter one where both do, within the furthest; null when none does. */
export function vanishing(off: (by: number) => number): number | null {
  const here = off(0);
  if (Number.isNaN(here)) return null;
  if (here === 0) return 0;
  const ends = [FURTHEST / 8, FURTHEST / 4, FURTHEST / 2, FURTHEST].flatMap((by) => [-by, by]);
  const end = ends.find((by) => off(by) < 0 !== here < 0 && !Number.isNaN(off(by)));
  return end === undefined ? null : rootBetween(off, Math.min(0, end), Math.max(0, end));
}
