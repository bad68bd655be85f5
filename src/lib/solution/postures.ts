import { degrees } from '$lib/geometry/angle.ts';
import { angleBetween, cross, length, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { headOf, posturesServed } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { triangleOf } from '$lib/layout/triangle.ts';
import type { Layout, Posture, Project, SideName } from '$lib/project/project.ts';
import type { Plan, TrianglePlan } from './document.ts';
import { seatsOf } from './headVoices.ts';
import { trianglePlan } from './trianglePlan.ts';

/** What the planned seat is called among the postures. */
const SEAT = 'seat';

/** One way of sitting under the aim of the layout. */
export interface PosturePlan {
  readonly name: string;
  /** Whether the aim is for it: the planned seat always is. */
  readonly served: boolean;
  readonly head: Vec3;
  readonly sides: Readonly<Record<SideName, PostureSide>>;
  readonly triangle: TrianglePlan;
}

/** How an axis passes a head: by so much, mm, and degrees at the aimed point. */
interface Pass {
  readonly miss: number;
  readonly offAxis: number;
}

export interface PostureSide extends Pass {
  /** The best that the rules could do for it: aimed for this posture alone, toe and tilt in degrees, lift in mm. Null where that has no answer. */
  readonly alone: (Pass & { readonly toe: number; readonly tilt: number; readonly lift: number }) | null;
}

/** Every way of sitting, the planned one first: how the axes pass its head, and how they would if the aim were for it alone. */
export function posturesOf(plan: Plan): readonly PosturePlan[] {
  const { project, layout, sides, speedOfSound } = plan;
  const served = new Set(posturesServed(layout).map(({ name }) => name));
  return seatsOf(layout, plan).map(({ posture, head }) => {
    const own = layout.listener.postures.find(({ name }) => name === posture);
    const { left, right } = sides;
    const sideOf = (side: SideName): PostureSide => ({
      ...passOf(sides[side].aimedPoint, sides[side].axis, head),
      alone: aimedAlone(project, layout, own, side),
    });
    return {
      name: posture ?? SEAT,
      served: posture === null || served.has(posture),
      head,
      sides: { left: sideOf('left'), right: sideOf('right') },
      triangle: trianglePlan(triangleOf(left.aimedPoint, right.aimedPoint, head), speedOfSound),
    };
  });
}

function passOf(aimedPoint: Vec3, axis: Vec3, head: Vec3): Pass {
  const there = subtract(head, aimedPoint);
  return { miss: length(cross(axis, there)), offAxis: degrees(angleBetween(axis, there)) };
}

/** @param posture Undefined for the planned seat. */
function aimedAlone(
  { speaker }: Project,
  layout: Layout,
  posture: Posture | undefined,
  side: SideName,
): PostureSide['alone'] {
  const { setback, earHeight } = posture ?? layout.listener;
  const alone = { ...layout, listener: { ...layout.listener, setback, earHeight }, aim: { ...layout.aim, over: null } };
  const placed = placeSide(speaker, alone, side);
  if (!placed.ok) return null;
  const { toe, tilt, lift, aimedPoint, forward } = placed.value;
  const pass = passOf(aimedPoint, forward, headOf(alone.listener, layout.desk));
  return { toe: degrees(toe), tilt: degrees(tilt), lift, ...pass };
}
