import { dot, subtract, vec3 } from '$lib/geometry/point.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import { earsOf, headOf } from './ears.ts';
import { placeSide } from './place.ts';
import type { Pose } from './pose.ts';

/** What a millimetre of ear height does to one loudspeaker's aim. */
export interface EarSensitivity {
  /** Radians of tilt and mm of lift that the aim changes by, as the tilt rule solves them; 0 for what is given. */
  readonly tilt: number;
  readonly lift: number;
  /** mm by which the axis passes higher or lower than a head at another height, when the stand is made already. */
  readonly miss: number;
}

/**
 * Exact derivatives at the pose. The axis stands, over the lift, D·sin θ + h/cos α + run·tan α high where it passes the
 * target (the first term with the front high only), so dθ = d(ear) / (D·cos θ + (h·sin α + run)/cos² α).
 */
export function earSensitivity(speaker: Speaker, layout: Layout, pose: Pose): EarSensitivity {
  const miss = Math.cos(pose.elevation);
  switch (layout.aim.tilt.rule) {
    case 'as-set':
      return { tilt: 0, lift: 0, miss };
    case 'lift-to-ear':
      return { tilt: 0, lift: 1, miss };
    case 'tilt-to-ear': {
      const front = vec3(pose.mark.x, pose.mark.y, pose.frontEdgeHeight);
      const height = dot(subtract(pose.aimedPoint, front), pose.up);
      const rise = pose.tilt >= 0 ? speaker.depth * Math.cos(pose.tilt) : 0;
      const slope = (height * Math.sin(pose.elevation) + runOf(layout, pose)) / Math.cos(pose.elevation) ** 2;
      return { tilt: 1 / (rise + slope), lift: 0, miss };
    }
  }
}

/** From the mark to the target along the toed direction, in plan. */
function runOf({ listener, desk, aim }: Layout, { side, mark, rearLevel }: Pose): number {
  const target = aim.toe.rule === 'to-ear' ? earsOf(listener, desk)[side] : headOf(listener, desk);
  return -dot(subtract(target, mark), vec3(rearLevel.x, rearLevel.y, 0));
}

/** Tilt (radians) and lift (mm) that another ear height asks for. */
export interface EarAim {
  readonly tilt: number;
  readonly lift: number;
}

/** The aim solved anew for another ear height over the floor, mm; null when that has no answer. */
export function aimFor(speaker: Speaker, layout: Layout, side: SideName, earHeight: number): EarAim | null {
  const pose = placeSide(speaker, { ...layout, listener: { ...layout.listener, earHeight } }, side);
  return pose.ok ? { tilt: pose.value.tilt, lift: pose.value.lift } : null;
}
