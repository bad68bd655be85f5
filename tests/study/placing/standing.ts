import { angleBetween, cross, distance, length, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, sixSided, stretchInside } from '$lib/geometry/solid.ts';
import { radians } from '$lib/geometry/angle.ts';
import { bodyGap } from '$lib/geometry/bodyGap.ts';
import { monitorBodies } from '$lib/layout/bodies.ts';
import { earsOf, headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { PlaceAsk } from '$lib/study/placing/ask.ts';
import { rectangleOf } from '../../rooms.ts';

/** Stands of a slope in degrees and a lift, the same on both sides; the whole desk, nothing else. */
export function askFor(layout: Layout, tilt: number, lift: number, more: Partial<PlaceAsk> = {}): PlaceAsk {
  const stand = { tilt: radians(tilt), lift, toe: null, footprint: null };
  const { width, depth } = rectangleOf(layout.desk);
  return {
    stands: { left: stand, right: stand },
    allowed: { miss: 10 },
    clear: { screen: 0, wall: 0 },
    marks: { left: -width / 2, right: width / 2, front: 0, back: depth },
    setback: null,
    earHeight: null,
    ...more,
  };
}

/** A loudspeaker on its stand at a mark in the desk frame, by the general solver. */
export function posed(
  project: Project,
  layout: Layout,
  ask: PlaceAsk,
  side: SideName,
  mark: { x: number; y: number },
): Pose | null {
  // prettier-ignore
  const { tilt, lift } = ask.stands[side];
  const result = placeSide(
    project.speaker,
    {
      ...layout,
      placement: { ...layout.placement, [side]: { ...layout.placement[side], ...mark } },
      aim: { ...layout.aim, tilt: { rule: 'as-set', degrees: (tilt * 180) / Math.PI } },
      stand: { ...layout.stand, lift },
    },
    side,
  );
  return result.ok ? result.value : null;
}

/** The point that the layout's tilt rule aims at: the head, or the ear of that side, where the axis passes it in plan. */
export function targetOf(layout: Layout, side: SideName, { aimedPoint, forward }: Pose): Vec3 {
  const { listener, desk, aim } = layout;
  const point = aim.toe.rule === 'to-ear' ? earsOf(listener, desk)[side] : headOf(listener, desk);
  const level = vec3(forward.x, forward.y, 0);
  const size = length(level);
  const ahead = ((point.x - aimedPoint.x) * level.x + (point.y - aimedPoint.y) * level.y) / size;
  return vec3(aimedPoint.x + (ahead * level.x) / size, aimedPoint.y + (ahead * level.y) / size, point.z);
}

/** Distance of a point from the axis, mm; Infinity behind the baffle. */
export function offAxis({ aimedPoint, forward }: Pose, target: Vec3): number {
  const to = subtract(target, aimedPoint);
  return angleBetween(to, forward) < Math.PI / 2 ? length(cross(to, forward)) : Infinity;
}

/** Whether the stand hits there and the loudspeaker can stand, as the layout itself says, `slack` mm generous. */
export function willDo(
  project: Project,
  layout: Layout,
  ask: PlaceAsk,
  side: SideName,
  mark: { x: number; y: number },
  slack: number,
): boolean {
  // prettier-ignore
  const pose = posed(project, layout, ask, side, mark);
  if (!pose || ask.allowed === 'safe-zone') return false;
  const { desk, room, listener, monitors } = layout;
  const target = targetOf(layout, side, pose);
  const behind = distance(vec3(mark.x, mark.y, 0), vec3(target.x, target.y, 0));
  if (offAxis(pose, target) > ask.allowed.miss + slack || behind < 90) return false;
  if (Math.abs(pose.toe) > Math.PI / 2 && layout.aim.toe.rule !== 'as-set') return false;
  const body = sixSided(pose.cabinet);
  const ears = earsOf(listener, desk);
  const base = pose.cabinet.slice(0, 4);
  const off = base.some(
    ({ x, y }) =>
      y < -slack || y > rectangleOf(desk).depth + slack || Math.abs(x) > rectangleOf(desk).width / 2 + slack,
  );
  const head = headOf(listener, desk).x;
  const own = pose.cabinet.every(({ x }) => (side === 'right' ? x - head : head - x) >= -slack);
  const walled = pose.cabinet.some(({ x, y }) =>
    room.walls.some(({ bearing, distance: far }) => {
      const turn = radians(bearing);
      return x * Math.sin(turn) + y * Math.cos(turn) > far + slack;
    }),
  );
  const screened = monitors
    .flatMap(monitorBodies)
    .some((screen) => overlapDepth(body, screen) > slack || bodyGap(body, screen) < ask.clear.screen - slack);
  return !off && own && !walled && !screened && stretchInside(body, ears.left, ears.right) === null;
}
