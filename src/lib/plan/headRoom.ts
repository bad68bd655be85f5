import { headRoom, type HeadRoom, type Seat } from '$lib/acoustics/headRoom.ts';
import { HEAD_LIMITS, type Voice } from '$lib/acoustics/headHearing.ts';
import { headOf } from '$lib/layout/ears.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { Plan } from './document.ts';
import { placedDrivers } from './placedDrivers.ts';

/** How far the head may move, as the page sees it: mm, dB and µs; the limits with their sources. Plain data and arrays. */
export interface HeadRoomPlan extends HeadRoom {
  readonly layout: string;
  readonly limits: typeof HEAD_LIMITS;
}

/**
 * How far the head may move from the planned seat and from every other posture. `plan` must be the plan of this project
 * and layout. Pure; some milliseconds for each posture, so it is called beside the plan, in a worker.
 */
export function headRoomOf(project: Project, layout: Layout, plan: Plan): HeadRoomPlan {
  const { listener, desk } = layout;
  const voice = (side: SideName): Voice => {
    const of = plan.sides[side];
    return { forward: of.axis, aimedPoint: of.aimedPoint, drivers: placedDrivers(project.speaker, of) };
  };
  const postures = listener.postures.map((posture): Seat => ({
    posture: posture.name,
    head: headOf({ ...listener, setback: posture.setback, earHeight: posture.earHeight }, desk),
  }));
  const voices = { left: voice('left'), right: voice('right') };
  const seats = [{ posture: null, head: plan.head }, ...postures] as const;
  return {
    layout: plan.layout,
    limits: HEAD_LIMITS,
    ...headRoom(project.speaker, voices, seats, plan.speedOfSound),
  };
}
