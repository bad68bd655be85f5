import { add, along, scale, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { middleOfBox } from '$lib/project/cabinet.ts';
import type { StoodSpeaker } from '$lib/project/stood.ts';

/** Something heavy: its centre of mass in the desk frame, mm, and its mass, kg. */
export interface Weight {
  readonly centre: Vec3;
  readonly mass: number;
}

/**
 * Centre of mass of the cabinet: where the project says, else the middle of the box, that is of its volume: a leaning
 * baffle makes the box a trapezium from the side. Midway between the sides of an upright cabinet.
 */
export function cabinetCentre(
  speaker: StoodSpeaker,
  {
    mark,
    frontEdgeHeight,
    inboard,
    rearSlope,
    bottomNormal,
  }: Pick<Pose, 'mark' | 'frontEdgeHeight' | 'inboard' | 'rearSlope' | 'bottomNormal'>,
): Vec3 {
  const { depth, height } = speaker.centreOfMass ?? middleOfBox(speaker);
  const frontEdge = vec3(mark.x, mark.y, mark.z + frontEdgeHeight);
  const centre = along(along(frontEdge, rearSlope, depth), bottomNormal, height);
  return speaker.laid ? along(centre, inboard, speaker.laid.balance) : centre;
}

/** Two weights as one. */
export function together(a: Weight, b: Weight): Weight {
  const mass = a.mass + b.mass;
  return { centre: scale(add(scale(a.centre, a.mass), scale(b.centre, b.mass)), 1 / mass), mass };
}
