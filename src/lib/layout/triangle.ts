import { distance, type Vec3 } from '$lib/geometry/point.ts';

/** The stereo triangle: from one aimed point to the other and to the head. mm and radians. */
export interface Triangle {
  readonly base: number;
  readonly leftDistance: number;
  readonly rightDistance: number;
  /** Subtended at the head in plan, 0…π. */
  readonly angle: number;
}

export const triangleOf = (left: Vec3, right: Vec3, head: Vec3): Triangle => ({
  base: distance(left, right),
  leftDistance: distance(left, head),
  rightDistance: distance(right, head),
  angle: angleAtHead(left, right, head),
});

/** Between the directions to two points as seen from the head, in plan: 0…π. */
export function angleAtHead(left: Vec3, right: Vec3, head: Vec3): number {
  const [lx, ly, rx, ry] = [left.x - head.x, left.y - head.y, right.x - head.x, right.y - head.y];
  return Math.atan2(Math.abs(lx * ry - ly * rx), lx * rx + ly * ry);
}
