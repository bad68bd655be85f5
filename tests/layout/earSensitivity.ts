import { dot, subtract, vec3 } from '$lib/geometry/point.ts';
import type { Layout, Speaker } from '$lib/project/project.ts';
import { earsOf, headOf } from '$lib/layout/ears.ts';
import type { Pose } from '$lib/layout/pose.ts';

/** What a millimetre of ear height does to one loudspeaker's aim. */
interface EarSensitivity {
  /** Radians of tilt and mm of lift that the aim changes by, as the tilt rule solves them; 0 for what is given. */
  readonly tilt: number;
  readonly lift: number;
}

/**
 * Exact derivatives at the pose. The axis stands, over the lift, D·sin θ + h/cos α + run·tan α high where it passes the
 * target (the first term with the front high only), so dθ = d(ear) / (D·cos θ + (h·sin α + run)/cos² α).
 */
export function earSensitivity(speaker: Speaker, layout: Layout, pose: Pose): EarSensitivity {
  switch (layout.aim.tilt.rule) {
    case 'as-set':
      return { tilt: 0, lift: 0 };
    case 'lift-to-ear':
      return { tilt: 0, lift: 1 };
    case 'tilt-to-ear': {
      const front = vec3(pose.mark.x, pose.mark.y, pose.frontEdgeHeight);
      const height = dot(subtract(pose.aimedPoint, front), pose.up);
      const rise = pose.tilt >= 0 ? speaker.depth * Math.cos(pose.tilt) : 0;
      const slope = (height * Math.sin(pose.elevation) + runOf(layout, pose)) / Math.cos(pose.elevation) ** 2;
      return { tilt: 1 / (rise + slope), lift: 0 };
    }
  }
}

/** From the mark to the target along the toed direction, in plan. */
function runOf({ listener, desk, aim }: Layout, { side, mark, rearLevel }: Pose): number {
  const target = aim.toe.rule === 'to-ear' ? earsOf(listener, desk)[side] : headOf(listener, desk);
  return -dot(subtract(target, mark), vec3(rearLevel.x, rearLevel.y, 0));
}
