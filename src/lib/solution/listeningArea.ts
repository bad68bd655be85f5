import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { listeningAreaSteps as stepsFor, type ListeningArea } from '$lib/acoustics/listeningArea.ts';
import { trebleDriver } from '$lib/acoustics/trebleDriver.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import type { DriverPlan, Plan } from './document.ts';
import { seatsOf, voicesOf } from './headVoices.ts';
import { radiatingPlan } from './sides.ts';

/** How far the head may move, as the page sees it: mm, dB and µs; the limits with their sources. Plain data and arrays. */
export interface ListeningAreaPlan extends ListeningArea {
  readonly layout: string;
  readonly limits: typeof HEAD_LIMITS;
  /** The driver whose beam sets the treble, and what it radiates from. */
  readonly treble: { readonly driver: string } & Pick<DriverPlan, 'radiating' | 'radiatingEstimated'>;
}

/**
 * How far the head may move from the planned seat and from every other posture. `plan` must be of this project and
 * layout. Pure; some milliseconds for each posture, so it is asked for in a worker, in
 * steps of some milliseconds, each with the share that is done, 0…1.
 */
export function* listeningAreaSteps(
  project: Project,
  layout: Layout,
  plan: Plan,
): Generator<number, ListeningAreaPlan> {
  const steps = stepsFor(project.speaker, voicesOf(project, plan), seatsOf(layout, plan), plan.speedOfSound);
  const driver = trebleDriver(project.speaker.drivers);
  const treble = { driver: driver.name, ...radiatingPlan(driver) };
  return { layout: layout.name, limits: HEAD_LIMITS, treble, ...(yield* steps) };
}
