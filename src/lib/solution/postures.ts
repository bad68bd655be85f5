import { degrees } from '$lib/geometry/angle.ts';
import { angleBetween, cross, length, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { triangleOf } from '$lib/layout/triangle.ts';
import type { SideName } from '$lib/project/project.ts';
import type { SidePlan, TrianglePlan } from './document.ts';
import { seatsOf } from './headVoices.ts';
import type { Solution } from './solution.ts';
import { trianglePlan } from './trianglePlan.ts';

/** What the planned seat is called among the postures. */
const SEAT = 'seat';

/** One way of sitting under the aim of the layout. */
export interface PosturePlan {
  readonly name: string;
  readonly head: Vec3;
  readonly sides: Readonly<Record<SideName, { readonly miss: number; readonly offAxis: number }>>;
  readonly triangle: TrianglePlan;
}

/** Every way of sitting, the planned one first: what the axes miss its head by, mm, and pass it by, degrees at the aimed point. */
export const posturesOf = (solution: Solution): readonly PosturePlan[] =>
  seatsOf(solution.layout, solution).map(({ posture, head }) => {
    const { left, right } = solution.sides;
    return {
      name: posture ?? SEAT,
      head,
      sides: { left: missOf(left, head), right: missOf(right, head) },
      triangle: trianglePlan(triangleOf(left.aimedPoint, right.aimedPoint, head), solution.speedOfSound),
    };
  });

function missOf({ aimedPoint, axis }: SidePlan, head: Vec3): { readonly miss: number; readonly offAxis: number } {
  const there = subtract(head, aimedPoint);
  return { miss: length(cross(axis, there)), offAxis: degrees(angleBetween(axis, there)) };
}
