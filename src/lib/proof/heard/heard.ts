import { frequencies } from '$lib/acoustics/grid.ts';
import type { HeardOne } from '$lib/project/project.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import type { Plan } from '$lib/solution/document.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { responsesOf, withHead } from '$lib/solution/soundBand.ts';
import type { NotchPlan, SoundPlan } from '$lib/solution/soundDocument.ts';
import { matchDips, type Matched } from './dips.ts';
import { overlayOf, type Overlay } from './overlay.ts';
import { notchesOf, tracked, type NotchesAt } from './tracked.ts';
import { movesToTry, type Trial } from './tries.ts';

/** One measured response of a layout, held against what is predicted where its microphone stood. */
export interface Heard {
  readonly one: HeardOne;
  readonly overlay: Overlay;
  /** Null for one near the driver: nothing but the loudspeaker is heard there. */
  readonly matched: Matched | null;
  /** What a move of the microphone would tell of each matched dip, by its place among the dips. */
  readonly trials: readonly Trial[];
}

/** What two responses of one loudspeaker, between which the microphone was moved, say of one surface. */
export interface Followed {
  /** Places of the two among the layout's measured responses. */
  readonly from: number;
  readonly to: number;
  readonly notch: NotchPlan;
  /** Hz, before and after. `measured` after is null where no dip was found that fits. */
  readonly predicted: readonly [number, number];
  readonly measured: readonly [number, number | null];
}

export interface HeardAnswer {
  readonly all: readonly Heard[];
  readonly followed: readonly Followed[];
}

export const NOTHING_HEARD: HeardAnswer = { all: [], followed: [] };

/** The window that a measured response was smoothed with before, octaves. */
const WINDOWS: Readonly<Record<HeardOne['smoothed'], number>> = {
  none: 0,
  '1/24': 1 / 24,
  '1/12': 1 / 12,
  '1/6': 1 / 6,
  '1/3': 1 / 3,
};

/**
 * The measured responses of the plan's layout, each against its prediction. Yields the share done.
 *
 * @param moves Whether moves of the microphone are looked into as well: a score of predictions a response.
 */
export function* hearSteps(plan: Plan, moves = true): Generator<number, HeardAnswer> {
  const heard = plan.layout.built?.heard ?? [];
  const sounds = new Map<string, SoundPlan>();
  const soundAt = ({ x, y, z }: HeardOne['moved']): SoundPlan => {
    const key = JSON.stringify([x, y, z]);
    const known = sounds.get(key);
    if (known) return known;
    const { layout, plan: of } = withHead({ layout: plan.layout, plan }, { x, y, z });
    const sound = soundOf(plan.project, layout, of);
    sounds.set(key, sound);
    return sound;
  };
  const notchesAt = notchesOf(plan);
  const all: Heard[] = [];
  for (const one of heard) {
    const sound = soundAt(one.moved);
    const response = responsesOf(sound)[one.of];
    const band = one.at === 'near' ? null : (sound.bands?.[one.of] ?? null);
    const already = WINDOWS[one.smoothed];
    const overlay = one.at === 'near' ? overlayOf(one.curve, already, FLAT, null) : overlayOf(one.curve, already, response, band);
    const near = heard.find(({ of, at }) => at === 'near' && of === one.of);
    const own = near ? overlayOf(near.curve, WINDOWS[near.smoothed], FLAT, null) : null;
    const matched = one.at === 'near' ? null : matchDips(one.curve, already, overlay, response, band, own, plan.speedOfSound);
    const trials = matched && moves ? movesToTry(one, matched, notchesAt) : [];
    all.push({ one, overlay, matched, trials });
    yield all.length / heard.length;
  }
  return { all, followed: moves ? followedOf(all, notchesAt) : [] };
} // prettier-ignore

/** What a loudspeaker alone is taken for. */
const FLAT = { fine: new Float64Array(frequencies.length), smooth: new Float64Array(frequencies.length) };

/** What the dips of each response came to in the next one of the same loudspeaker with the microphone elsewhere. */
const followedOf = (all: readonly Heard[], at: NotchesAt): readonly Followed[] =>
  all.flatMap((before, from) => {
    const { one } = before;
    const to = all.findIndex(
      (after, place) => place > from && after.matched && after.one.of === one.of && !sameJson(after.one.moved, one.moved),
    );
    const after = all[to];
    if (!before.matched || !after?.matched) return [];
    const { dips, within } = after.matched;
    return before.matched.dips.flatMap(({ frequency, by }) => {
      if (by === null || by === 'loudspeaker' || by.notch.cause === null) return [];
      const then = tracked(by.notch, at, one.of, one.moved, after.one.moved);
      if (!then) return [];
      const place = frequency * (then.frequency / by.notch.frequency);
      const [found] = dips.map((dip) => dip.frequency).sort((a, b) => Math.abs(Math.log(a / place)) - Math.abs(Math.log(b / place)));
      const there = found !== undefined && Math.abs(Math.log2(found / place)) <= 2 * within ? found : null;
      return [{ from, to, notch: by.notch, predicted: [by.notch.frequency, then.frequency] as const, measured: [frequency, there] as const }];
    });
  }); // prettier-ignore
