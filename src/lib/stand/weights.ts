import { radians } from '$lib/geometry/angle.ts';
import { add, along, scale, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Speaker } from '$lib/project/project.ts';
import { centroidOf } from './centroid.ts';

/** Something heavy: its centre of mass in the desk frame, mm, and its mass, kg. */
export interface Weight {
  readonly centre: Vec3;
  readonly mass: number;
}

/**
 * Centre of mass of the cabinet: where the project says, else the middle of the box, that is of its volume: a leaning
 * baffle makes the box a trapezium from the side. Always midway between the cabinet's sides.
 */
export function cabinetCentre(
  speaker: Pick<Speaker, 'depth' | 'height' | 'baffleRake' | 'centreOfMass'>,
  {
    mark,
    frontEdgeHeight,
    rearSlope,
    bottomNormal,
  }: Pick<Pose, 'mark' | 'frontEdgeHeight' | 'rearSlope' | 'bottomNormal'>,
): Vec3 {
  const { depth, height } = speaker.centreOfMass ?? middleOfBox(speaker);
  const frontEdge = vec3(mark.x, mark.y, mark.z + frontEdgeHeight);
  return along(along(frontEdge, rearSlope, depth), bottomNormal, height);
}

function middleOfBox({ depth, height, baffleRake }: Pick<Speaker, 'depth' | 'height' | 'baffleRake'>) {
  // Without rake the middle is exact, free of the rounding of a centroid's sums.
  if (baffleRake === 0) return { depth: depth / 2, height: height / 2 };
  const side: Point[] = [
    [0, 0],
    [depth, 0],
    [depth, height],
    [height * Math.tan(radians(baffleRake)), height],
  ];
  const [middleDepth, middleHeight] = centroidOf(side, []);
  return { depth: middleDepth, height: middleHeight };
}

/** Two weights as one. */
export function together(a: Weight, b: Weight): Weight {
  const mass = a.mass + b.mass;
  return { centre: scale(add(scale(a.centre, a.mass), scale(b.centre, b.mass)), 1 / mass), mass };
}
