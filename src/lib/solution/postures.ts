import { degrees } from '$lib/geometry/angle.ts';
import { along, angleBetween, cross, length, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { headIn, headOf, posturesServed, sceneOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { triangleOf } from '$lib/layout/triangle.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { Plan, TrianglePlan } from './document.ts';
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

/**
 * Every way of sitting, the planned one first: how the axes pass its head, and how they would if the aim were for it alone.
 * Each in the frame of the desk as it then is; a loudspeaker that does not ride along with the desk is higher or lower in it.
 */
export function posturesOf(plan: Plan): readonly PosturePlan[] {
  const { project, layout, sides, speedOfSound } = plan;
  const served = new Set(posturesServed(layout).map(({ name }) => name));
  const planOf = (name: string, isServed: boolean, scene: Layout, met: (side: SideName) => Vec3): PosturePlan => {
    const head = headOf(scene.listener, scene.desk);
    const aimedPoint = (side: SideName): Vec3 => along(sides[side].aimedPoint, UP, head.z - met(side).z);
    const sideOf = (side: SideName): PostureSide => ({
      ...passOf(aimedPoint(side), sides[side].axis, head),
      alone: aimedAlone(project, scene, side),
    });
    return {
      name,
      served: isServed,
      head,
      sides: { left: sideOf('left'), right: sideOf('right') },
      triangle: trianglePlan(triangleOf(aimedPoint('left'), aimedPoint('right'), head), speedOfSound),
    };
  };
  return [
    planOf(SEAT, true, layout, () => plan.head),
    ...layout.listener.postures.map((posture) =>
      planOf(posture.name, served.has(posture.name), sceneOf(layout, posture), (side) => headIn(posture, layout, side)),
    ),
  ];
}

const UP = vec3(0, 0, 1);

function passOf(aimedPoint: Vec3, axis: Vec3, head: Vec3): Pass {
  const there = subtract(head, aimedPoint);
  return { miss: length(cross(axis, there)), offAxis: degrees(angleBetween(axis, there)) };
}

function aimedAlone({ speaker }: Project, scene: Layout, side: SideName): PostureSide['alone'] {
  const alone = { ...scene, aim: { ...scene.aim, over: null } };
  const placed = placeSide(speaker, alone, side);
  if (!placed.ok) return null;
  const { toe, tilt, lift, aimedPoint, forward } = placed.value;
  const pass = passOf(aimedPoint, forward, headOf(scene.listener, scene.desk));
  return { toe: degrees(toe), tilt: degrees(tilt), lift, ...pass };
}
