import { faces, type Camera } from './look.ts';
import type { SpaceLine } from './space.ts';

/** Whether a line is there to be seen, should nothing stand before it: one by itself always, an edge with a face of its own. */
export function isSeen({ between, blunt, from }: SpaceLine, camera: Camera): boolean {
  if (between.length === 0) return true;
  const turned = between.filter((normal) => faces(camera, normal, from)).length;
  return blunt ? turned > 0 && turned < between.length : turned > 0;
}
