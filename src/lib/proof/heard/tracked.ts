import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { responsesOf, withHead, type Voice } from '$lib/solution/soundBand.ts';
import type { NotchPlan } from '$lib/solution/soundDocument.ts';

/** Notches of one loudspeaker, or of both, with a microphone so far from the head's place, mm. */
export type NotchesAt = (of: Voice, moved: Vec3) => readonly NotchPlan[];

/** What a plan predicts wherever a microphone stands; each place is worked out once. */
export function notchesOf(plan: Plan): NotchesAt {
  const known = new Map<string, ReturnType<typeof responsesOf>>();
  return (of, { x, y, z }) => {
    const key = JSON.stringify([x, y, z]);
    let there = known.get(key);
    if (!there) {
      const { layout, plan: moved } = withHead({ layout: plan.layout, plan }, vec3(x, y, z));
      there = responsesOf(soundOf(plan.project, layout, moved, { bands: false }));
      known.set(key, there);
    }
    return there[of].notches;
  };
}

/** Step of a microphone on its way, mm: in one of these no notch under some 10 kHz comes half way to its neighbour. */
const STEP = 20;

/** In one step a notch stays within this of where it was, octaves. */
const NEAR = 1 / 8;

/**
 * Where a notch goes as the microphone moves from one place to another: the nearest of the same cause, step by step. Null
 * where it is lost on the way, or comes half way to its neighbour in one step, so that nobody could say which it is.
 */
export function tracked(notch: NotchPlan, at: NotchesAt, of: Voice, from: Vec3, to: Vec3): NotchPlan | null {
  const way = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
  const steps = Math.max(1, Math.ceil(Math.hypot(way.x, way.y, way.z) / STEP));
  let now: NotchPlan | null = notch;
  for (let step = 1; step <= steps && now; step++) {
    const share = step / steps;
    now = nearest(now, at(of, { x: from.x + share * way.x, y: from.y + share * way.y, z: from.z + share * way.z }));
  }
  return now;
}

function nearest(notch: NotchPlan, others: readonly NotchPlan[]): NotchPlan | null {
  const far = ({ frequency }: NotchPlan): number => Math.abs(Math.log2(frequency / notch.frequency));
  const [first, second] = others
    .filter((one) => one.cause === notch.cause && one.monitor === notch.monitor)
    .sort((a, b) => far(a) - far(b));
  if (!first || far(first) > NEAR) return null;
  return second && far(second) < 2 * far(first) ? null : first;
}
