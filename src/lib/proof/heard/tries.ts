import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { HeardOne } from '$lib/project/project.ts';
import type { Matched } from './dips.ts';
import { tracked, type NotchesAt } from './tracked.ts';

/** A move of the microphone that shows whether a surface makes a dip: it goes where the prediction says, or it does not. */
export interface Trial {
  /** The dip's place among those of its response. */
  readonly dip: number;
  /** Of the microphone, mm: to the right, towards the desk, up. */
  readonly by: Vec3;
  /** Hz: where the dip is now, and where it should be then. */
  readonly from: number;
  readonly to: number;
}

/** Moves that a stand for a microphone allows at a desk, mm. */
const MOVES: readonly Vec3[] = [vec3(0, 0, 60), vec3(0, -100, 0), vec3(0, 100, 0), vec3(60, 0, 0), vec3(-60, 0, 0)];

/** A dip that moves by less, octaves, may as well have stayed. */
const CLEAR = 1 / 12;

/** Of each dip that a surface explains, the move that shifts it most, where one shifts it further than twice what the measurement tells apart. */
export function movesToTry({ of, moved }: HeardOne, { dips, within }: Matched, at: NotchesAt): readonly Trial[] {
  const clear = Math.max(CLEAR, 2 * within);
  return dips.flatMap(({ frequency, by: cause }, dip) => {
    if (cause === null || cause === 'loudspeaker' || cause.notch.cause === null) return [];
    const { notch } = cause;
    const [best] = MOVES.flatMap((by) => {
      const to = vec3(moved.x + by.x, moved.y + by.y, moved.z + by.z);
      const then = tracked(notch, at, of, moved, to);
      return then ? [{ by, shift: Math.log2(then.frequency / notch.frequency) }] : [];
    }).sort((a, b) => Math.abs(b.shift) - Math.abs(a.shift));
    if (!best || Math.abs(best.shift) < clear) return [];
    return [{ dip, by: best.by, from: frequency, to: frequency * 2 ** best.shift }];
  });
}
