import { cross, dot, length, scale, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { SideName, StandSettings } from '$lib/project/project.ts';
import type { Plan } from './document.ts';

/** The top of a stand's wood: the plane of the cabinet's bottom, less the pad between them. Desk frame, mm. */
export interface StandTop {
  /** Its height over what the stand is on above a place; of the plane, also beside the stand. */
  readonly height: (at: Point) => number;
  /** Corners of the base, seen from the middle of the desk. */
  readonly corners: {
    readonly frontInboard: Point;
    readonly rearInboard: Point;
    readonly frontOutboard: Point;
    readonly rearOutboard: Point;
  };
  /** Both ends of the cabinet's front bottom edge, where they lie on the wood, square to it through the pad. */
  readonly frontEdge: { readonly inboard: Vec3; readonly outboard: Vec3 };
}

/** The top of one stand; null where a plan holds no cabinet or no base. */
export function standTop(
  { sides, stand }: Pick<Plan, 'sides' | 'stand'>,
  side: SideName,
  { pad }: Pick<StandSettings, 'pad'>,
): StandTop | null {
  const [outboard, inboard, rear] = sides[side].cabinet;
  const [frontRight, rearRight, rearLeft, frontLeft] = stand[side].footprint;
  if (!outboard || !inboard || !rear || !frontRight || !rearRight || !rearLeft || !frontLeft) return null;
  const square = cross(subtract(inboard, outboard), subtract(rear, inboard));
  const up = scale(square, (square.z < 0 ? -1 : 1) / length(square));
  const onWood = (at: Vec3): Vec3 => subtract(at, scale(up, pad));
  const through = dot(onWood(inboard), up);
  const [inner, outer] = side === 'right' ? [[frontLeft, rearLeft], [frontRight, rearRight]] as const : [[frontRight, rearRight], [frontLeft, rearLeft]] as const; // prettier-ignore
  return {
    height: ([x, y]) => (through - dot(vec3(x, y, sides[side].mark.z), up)) / up.z,
    corners: { frontInboard: inner[0], rearInboard: inner[1], frontOutboard: outer[0], rearOutboard: outer[1] },
    frontEdge: { inboard: onWood(inboard), outboard: onWood(outboard) },
  };
}
