import type { Vec3 } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';

/** No drawing shows what is nearer, mm. */
const SAME = 0.05;

const mirrored = (left: Vec3, right: Vec3 | undefined): boolean =>
  right !== undefined &&
  Math.abs(left.x + right.x) < SAME &&
  Math.abs(left.y - right.y) < SAME &&
  Math.abs(left.z - right.z) < SAME;

/** Whether the left loudspeaker stands as the right one's mirror image, the head between them: one side view tells of both. */
export function sidesAlike({ sides: { left, right }, head }: Pick<Plan, 'sides' | 'head'>): boolean {
  return (
    Math.abs(head.x) < SAME &&
    mirrored(left.mark, right.mark) &&
    mirrored(left.aimedPoint, right.aimedPoint) &&
    left.cabinet.every((corner, index) => mirrored(corner, right.cabinet[index])) &&
    left.drivers.every(({ position }, index) => mirrored(position, right.drivers[index]?.position))
  );
}
