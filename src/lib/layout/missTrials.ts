import { along, length, type Vec3 } from '$lib/geometry/point.ts';
import { quantile, trials } from '$lib/geometry/trials.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { Sure } from '$lib/project/sure.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { cutNudges, missShifts } from './missSpread.ts';
import type { Scene } from './nudges.ts';
import { asCut, passing } from './passing.ts';
import { placeSide } from './place.ts';

/** How far the axis of a stand, cut by the numbers as measured, passes the head, again and again with other errors. */
export interface MissTrials {
  /** mm, smallest first. */
  readonly misses: Float64Array;
  /** What 95 % of the trials stay within, mm. */
  readonly within95: number;
  /** The same for the same errors, were the miss to follow each of them in proportion and their sum: to the first order. */
  readonly firstOrder95: number;
}

/** Where the first order is off by more of the distance than this, it is said to differ: trials of 10,000 tell no finer. */
const DIFFERS = 0.03;

/** Whether the first order says something else than the trials. */
export const differs = ({ within95, firstOrder95 }: Pick<MissTrials, 'within95' | 'firstOrder95'>): boolean =>
  Math.abs(within95 - firstOrder95) > DIFFERS * within95;

/** How often it is tried. */
export const TRIALS = 10_000;

/** Any: the same trials every time. */
const SEED = 20_260;

/**
 * The trials of one side. Yields the share that is done, 0…1. Each value lies anywhere within what `sure` admits with equal
 * chance; toe, tilt and lift stay as cut. Null when the aim has no answer.
 */
export function* missTrials(
  speaker: Speaker,
  layout: Layout,
  side: SideName,
  sure: Sure,
): Generator<number, MissTrials | null> {
  const planned = placeSide(speaker, layout, side);
  const shifts = missShifts(speaker, layout, side, sure);
  if (!planned.ok || !shifts) return null;
  const cut: Scene = { speaker, layout: asCut(layout, planned.value) };
  const at = passing(cut, side);
  if (!at) return null;
  const spans = cutNudges.map(([key]) => sure[key]);
  const how = { seed: SEED, count: TRIALS };
  const misses = yield* trials(
    spans,
    (off) => {
      const there = passing(
        cutNudges.reduce((scene, [, nudge], index) => nudge(scene, off[index] ?? 0), cut),
        side,
      );
      return there ? length(there) : NaN;
    },
    how,
  );
  const slopes = cutNudges.map(([key]) => [shifts.get(key), sure[key]] as const);
  const straight = toTheEnd(trials(spans, (off) => length(shifted(at, slopes, off)), how));
  return { misses, within95: quantile(misses, 0.95), firstOrder95: quantile(straight, 0.95) };
}

/** A point moved by what each error does, in proportion. */
function shifted(at: Vec3, slopes: readonly (readonly [Vec3 | undefined, number])[], off: Float64Array): Vec3 {
  let moved = at;
  for (const [index, [shift, span]] of slopes.entries()) {
    if (!shift || span === 0) continue;
    const share = (off[index] ?? 0) / span;
    moved = along(moved, shift, share);
  }
  return moved;
}
