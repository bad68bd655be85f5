import { length, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';

/** The directions of a cabinet that stands somewhere: unit vectors in the desk's frame. */
export interface CabinetFrame {
  readonly inboard: Vec3;
  /** From the front to the rear along the bottom. */
  readonly rear: Vec3;
  /** Along the baffle. */
  readonly up: Vec3;
  /** Out of the baffle: the axis. */
  readonly front: Vec3;
}

/** The corner at an index; the origin for one that is missing, which a plan never has. */
export const cornerOf = (side: SidePlan, index: number): Vec3 => side.cabinet[index] ?? vec3(0, 0, 0);

const unit = (v: Vec3): Vec3 => {
  const size = length(v);
  return size === 0 ? v : scale(v, 1 / size);
};

/** Read off the plan's eight corners, so that the drawing can never disagree with them. */
export function cabinetFrame(side: SidePlan): CabinetFrame {
  const [outboard, inboard, rear, over] = [0, 1, 3, 4].map((index) => cornerOf(side, index));
  const origin = outboard ?? vec3(0, 0, 0);
  const towards = (corner: Vec3 | undefined): Vec3 => unit(subtract(corner ?? origin, origin));
  return { inboard: towards(inboard), rear: towards(rear), up: towards(over), front: side.axis };
}
