import { add, along, between, cross, distance, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';

/** A thin, flat, rigid plate with straight edges. Lengths in mm, desk frame. */
export interface Plate {
  /** Counter-clockwise as seen from the tip of `normal`. */
  readonly corners: readonly Vec3[];
  /** Square to it, a unit vector. */
  readonly normal: Vec3;
  /** Whether its outline turns inwards nowhere. */
  readonly convex: boolean;
}

/** A rectangle from one corner and its two sides, which are square to each other; its normal is across × up. */
export function rectangularPlate(corner: Vec3, across: Vec3, up: Vec3): Plate {
  const square = cross(across, up);
  const size = Math.hypot(square.x, square.y, square.z);
  const right = add(corner, across);
  return {
    corners: [corner, right, add(right, up), add(corner, up)],
    normal: vec3(square.x / size, square.y / size, square.z / size),
    convex: true,
  };
}

/** How far a point lies over a plate's plane, on the side of its normal, mm. */
export const heightOver = ({ corners, normal }: Plate, point: Vec3): number =>
  dot(subtract(point, corners[0] ?? point), normal);

/** Whether two points lie on the same side of a plate's plane, or one of them in it. */
export const onOneSide = (plate: Plate, one: Vec3, other: Vec3): boolean =>
  heightOver(plate, one) * heightOver(plate, other) >= 0;

/** The point of a plate nearest to where the way from one point by its plane, or through it, to another meets the plane. */
export function metBy(plate: Plate, from: Vec3, to: Vec3): Vec3 {
  const { corners, normal } = plate;
  const [first, last] = [heightOver(plate, from), heightOver(plate, to)];
  const both = Math.abs(first) + Math.abs(last);
  const met = between(along(from, normal, -first), along(to, normal, -last), both === 0 ? 0.5 : Math.abs(first) / both);
  if (within(corners, normal, met)) return met;
  let nearest = met;
  let least = Infinity;
  corners.forEach((start, index) => {
    const side = subtract(corners[(index + 1) % corners.length] ?? start, start);
    const share = Math.min(1, Math.max(0, dot(subtract(met, start), side) / dot(side, side)));
    const point = add(start, scale(side, share));
    const far = distance(point, met);
    if (far < least) [nearest, least] = [point, far];
  });
  return nearest;
}

/** Whether a point of its plane lies within a plate, whichever way its outline turns: whether the corners go round the point. */
function within(corners: readonly Vec3[], normal: Vec3, point: Vec3): boolean {
  let turned = 0;
  corners.forEach((corner, index) => {
    const [from, to] = [subtract(corner, point), subtract(corners[(index + 1) % corners.length] ?? corner, point)];
    turned += Math.atan2(dot(cross(from, to), normal), dot(from, to));
  });
  return turned > Math.PI;
}
