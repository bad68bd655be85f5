import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { Sure, SureKey } from '$lib/project/sure.ts';
import { nudges, type Nudge, type Scene } from './nudges.ts';
import { placeSide } from './place.ts';
import type { Pose } from './pose.ts';

/** By how much a solved aim may be off, each to both sides: toe and tilt in radians, lift in mm. */
export interface AimSpread {
  readonly toe: number;
  readonly tilt: number;
  readonly lift: number;
}

/** What the measured values do to one loudspeaker's aim: each by itself, and all together. */
export interface MeasuredSpread {
  /** Of each value that an aim hangs on; null where a value so far off has no answer either way. */
  readonly by: ReadonlyMap<SureKey, AimSpread | null>;
  /**
   * Root of the sum of squares, for errors that know nothing of each other. Where each value lies anywhere within its span
   * with equal chance, it holds the aim in at least nine cases of ten: in 91.4 % with two equal spans, in all with one, and
   * in 91.7 % (√3 standard deviations of a normal distribution) with ever more. What has no answer is left out.
   */
  readonly all: AimSpread;
  /**
   * The most that values within their spans can do, all at once: the aims of the worst corners, for an aim that rises or
   * falls all the way with each value. Null where such a corner has no answer.
   */
  readonly most: AimSpread | null;
}

/**
 * How far toe, tilt and lift may be off when each measured value is off by as much as `sure` admits: half the difference of
 * the aims solved with the value that much larger and that much smaller, or the whole difference to the one side that
 * has an answer. The aim must have an answer; null when it has none.
 */
export function aimSpread(speaker: Speaker, layout: Layout, side: SideName, sure: Sure): MeasuredSpread | null {
  const base = placeSide(speaker, layout, side);
  if (!base.ok) return null;
  const aimed = (nudge: Nudge, by: number): Pose | null => {
    const scene = nudge({ speaker, layout }, by);
    const pose = placeSide(scene.speaker, scene.layout, side);
    return pose.ok ? pose.value : null;
  };
  const ends = new Map(
    nudges.map(([key, nudge]) => [key, [aimed(nudge, -sure[key]), aimed(nudge, sure[key])] as const]),
  );
  const by = new Map([...ends].map(([key, [less, more]]) => [key, between(less, base.value, more)]));
  const worst = (part: keyof AimSpread): number | null => {
    const corner = (way: 1 | -1): Pose | null => {
      const scene = nudges.reduce<Scene>((at, [key, nudge]) => nudge(at, way * rises(key, part) * sure[key]), {
        speaker,
        layout,
      });
      const pose = placeSide(scene.speaker, scene.layout, side);
      return pose.ok ? pose.value : null;
    };
    const [up, down] = [corner(1), corner(-1)];
    return up && down && Math.max(Math.abs(up[part] - base.value[part]), Math.abs(down[part] - base.value[part]));
  };
  const rises = (key: SureKey, part: keyof AimSpread): number => {
    const [less, more] = ends.get(key) ?? [null, null];
    return Math.sign((more ?? base.value)[part] - (less ?? base.value)[part]);
  };
  const known = [...by.values()].filter((one) => one !== null);
  const rootSum = (part: (one: AimSpread) => number): number => Math.hypot(...known.map(part));
  return {
    by,
    all: { toe: rootSum(({ toe }) => toe), tilt: rootSum(({ tilt }) => tilt), lift: rootSum(({ lift }) => lift) },
    // Worked out only where it is read.
    get most() {
      const [toe, tilt, lift] = [worst('toe'), worst('tilt'), worst('lift')];
      return toe === null || tilt === null || lift === null ? null : { toe, tilt, lift };
    },
  };
}

function between(less: Pose | null, now: Pose, more: Pose | null): AimSpread | null {
  if (less === null && more === null) return null;
  const [low, high] = [less ?? now, more ?? now];
  const share = less === null || more === null ? 1 : 2;
  return {
    toe: Math.abs(high.toe - low.toe) / share,
    tilt: Math.abs(high.tilt - low.tilt) / share,
    lift: Math.abs(high.lift - low.lift) / share,
  };
}
