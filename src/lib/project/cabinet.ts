import { radians } from '$lib/geometry/angle.ts';
import type { Speaker } from './project.ts';

/** Length of the baffle from its bottom to its top edge, mm: longer than the cabinet is high when the baffle leans. */
export const baffleLength = (speaker: Speaker): number => speaker.height / Math.cos(radians(speaker.baffleRake));

/** Depth of the cabinet's top, mm: the leaning baffle takes some away, or adds some. */
export const topDepth = (speaker: Speaker): number =>
  speaker.depth - speaker.height * Math.tan(radians(speaker.baffleRake));

/**
 * Middle of the box's volume as seen from the side, mm from the front edge along the bottom and over that: a leaning baffle
 * makes it a trapezium, its back plumb over the bottom's rear edge.
 */
export function middleOfBox(speaker: Speaker): { readonly depth: number; readonly height: number } {
  const { depth, height, baffleRake } = speaker;
  // Without rake the middle is exact, free of the rounding of the sums below.
  if (baffleRake === 0) return { depth: depth / 2, height: height / 2 };
  const top = topDepth(speaker);
  const both = depth + top;
  return {
    depth: depth - (depth * depth + depth * top + top * top) / (3 * both),
    height: (height * (depth + 2 * top)) / (3 * both),
  };
}
