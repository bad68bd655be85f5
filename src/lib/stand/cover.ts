import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';

/** What lies on the wood of a stand's faces, mm. */
export interface Cover {
  readonly top: number;
  readonly front: number;
  readonly rear: number;
  readonly base: number;
  /** On each of the two sides. */
  readonly side: number;
  /** Whether there is a skin in it. */
  readonly skinned: boolean;
}

/** A top and front skin of thin board under the veneer, mm; 0 for none. */
export interface Skin {
  readonly top: number;
  readonly front: number;
}

export const NO_SKIN: Skin = { top: 0, front: 0 };

/** Veneer on the faces that have it, and skins under it. */
export function coverOf({ veneer, veneerFaces }: StandSettings, skin: Skin = NO_SKIN): Cover {
  const on = (veneered: boolean): number => (veneered ? veneer : 0);
  return {
    top: on(veneerFaces.top) + skin.top,
    front: on(veneerFaces.front) + skin.front,
    rear: on(veneerFaces.rear),
    base: on(veneerFaces.base),
    side: on(veneerFaces.sides),
    skinned: skin.top > 0 || skin.front > 0,
  };
}

/**
 * What covers each edge of an outline: the first is the base, the second the rear end, the last the front end, all others
 * the top, the faces of a stop included.
 */
export const coverOfEdges = (outline: readonly Point[], { top, front, rear, base }: Cover): readonly number[] =>
  outline.map((_, edge) => (edge === 0 ? base : edge === 1 ? rear : edge === outline.length - 1 ? front : top));
