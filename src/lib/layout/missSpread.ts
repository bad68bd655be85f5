import { length, scale, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { Sure, SureKey } from '$lib/project/sure.ts';
import { nudges, type Nudge, type Scene } from './nudges.ts';
import { asCut, passing } from './passing.ts';
import { placeSide } from './place.ts';

/**
 * The measured values that move the axis of a stand which is cut. The cabinet’s depth does not: the slope that the stand was
 * cut for does not change with it.
 */
export const cutNudges: readonly (readonly [key: SureKey, nudge: Nudge])[] = nudges.filter(
  ([key]) => key !== 'speakerDepth',
);

/**
 * By how far the axis of a stand, cut by the numbers as measured, passes the head from where it is planned, mm, for each
 * measured value that is off by all of what `sure` admits while toe, tilt and lift stay as cut. Zero where a value so far
 * off has no answer; null when the aim has none.
 */
export function missShifts(
  speaker: Speaker,
  layout: Layout,
  side: SideName,
  sure: Sure,
): ReadonlyMap<SureKey, Vec3> | null {
  const planned = placeSide(speaker, layout, side);
  if (!planned.ok) return null;
  const cut: Scene = { speaker, layout: asCut(layout, planned.value) };
  return new Map(
    cutNudges.map(([key, nudge]) => {
      const [less, more] = [passing(nudge(cut, -sure[key]), side), passing(nudge(cut, sure[key]), side)];
      return [key, less && more ? scale(subtract(more, less), 0.5) : NOWHERE];
    }),
  );
}

const NOWHERE: Vec3 = { x: 0, y: 0, z: 0 };

/**
 * How far from where it is planned the axis of a stand, cut by the numbers as measured, may pass the head, mm, 0 or more:
 * root of the sum of squares over the measured values. As for an aim, values that lie anywhere within their spans with equal
 * chance keep within it in at least nine cases of ten. Null when the aim has no answer.
 */
export function missSpread(speaker: Speaker, layout: Layout, side: SideName, sure: Sure): number | null {
  const shifts = missShifts(speaker, layout, side, sure);
  return shifts && Math.hypot(...[...shifts.values()].map(length));
}
