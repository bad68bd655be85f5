import { along, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { strainOf, type HeadCriterion, type HeadHearing } from './headHearing.ts';

/** Ways for a head to move: to the listener's left and right, to the desk and away from it, up and down. */
export type HeadWay = 'left' | 'right' | 'forward' | 'back' | 'up' | 'down';

const direction: Record<HeadWay, Vec3> = {
  left: vec3(-1, 0, 0),
  right: vec3(1, 0, 0),
  forward: vec3(0, 1, 0),
  back: vec3(0, -1, 0),
  up: vec3(0, 0, 1),
  down: vec3(0, 0, -1),
};

/** How far a head may move one way, mm, and what then gives out; null when nothing does within `FURTHEST`. */
export interface HeadReach {
  readonly distance: number;
  readonly by: HeadCriterion | null;
}

/** Nobody sways further at a desk, mm. */
export const FURTHEST = 1000;

/** To what the end of a reach is found, mm: well under what a head can hold still. */
const PRECISION = 0.1;

/**
 * How far a head may move straight one way from `from` before any limit is used up. Walked in steps, so that a lobe
 * beyond a null does not count, then halved; the distance given is still inside. 0 with its cause when `from` is out.
 *
 * @param step mm: small enough that no limit is passed and met again within one. See `stepFor`.
 */
export function reachOf(hear: (head: Vec3) => HeadHearing, from: Vec3, way: HeadWay, step: number): HeadReach {
  const at = (distance: number) => strainOf(hear(along(from, direction[way], distance)));
  const here = at(0);
  if (here.used > 1) return { distance: 0, by: here.by };
  let inside = 0;
  while (inside < FURTHEST) {
    const next = Math.min(inside + step, FURTHEST);
    if (at(next).used > 1) return halved(at, inside, next);
    inside = next;
  }
  return { distance: FURTHEST, by: null };
}

function halved(at: (distance: number) => ReturnType<typeof strainOf>, inside: number, outside: number): HeadReach {
  let [good, bad] = [inside, outside];
  while (bad - good > PRECISION) {
    const middle = (good + bad) / 2;
    if (at(middle).used > 1) bad = middle;
    else good = middle;
  }
  return { distance: good, by: at(bad).by };
}

/** The longest step, mm, whatever the drivers do. */
const LONGEST_STEP = 5;
/** A move by a step changes the difference of two paths by twice as much at most: an eighth of a wave. */
const STEPS_A_WAVE = 16;

/** The step for a loudspeaker whose highest crossover is at `frequency` Hz; `speed` in m/s. */
export const stepFor = (frequency: number, speed: number): number =>
  Math.min(LONGEST_STEP, (1000 * speed) / (frequency * STEPS_A_WAVE));
