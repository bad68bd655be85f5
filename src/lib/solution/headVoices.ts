import { hearingAt, type HeadHearing, type Voice, type Voices } from '$lib/acoustics/headHearing.ts';
import type { Seat } from '$lib/acoustics/listeningArea.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { headIn } from '$lib/layout/ears.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import type { Plan } from './document.ts';
import { placedDrivers } from './placedDrivers.ts';

/** What a head hears at any place, compared with the planned one, from a plan of this project. */
export const hearingOf = (project: Project, plan: Plan): ((head: Vec3) => HeadHearing) =>
  hearingAt(project.speaker, voicesOf(project, plan), plan.head, plan.speedOfSound);

/** Both loudspeakers of a plan as a listener meets them. */
export function voicesOf(project: Project, plan: Plan): Voices {
  const voice = (side: SideName): Voice => {
    const of = plan.sides[side];
    return { forward: of.axis, aimedPoint: of.aimedPoint, drivers: placedDrivers(asStood(project.speaker), of) };
  };
  return { left: voice('left'), right: voice('right') };
}

/**
 * Every way of sitting as the loudspeakers meet it, the planned one first. Left out are postures in which only one of the two
 * rides along with the desk: then the pair is another than the planned one.
 */
export const seatsOf = (layout: Layout, plan: Pick<Plan, 'head'>): [Seat, ...Seat[]] => [
  { posture: null, head: plan.head },
  ...layout.listener.postures.flatMap((posture): Seat[] => {
    const [left, right] = [headIn(posture, layout, 'left'), headIn(posture, layout, 'right')];
    return left.z === right.z ? [{ posture: posture.name, head: right }] : [];
  }),
];
