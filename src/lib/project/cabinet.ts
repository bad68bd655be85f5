import { radians } from '$lib/geometry/angle.ts';
import type { Speaker } from './project.ts';

/** Length of the baffle from its bottom to its top edge, mm: longer than the cabinet is high when the baffle leans. */
export const baffleLength = (speaker: Speaker): number => speaker.height / Math.cos(radians(speaker.baffleRake));

/** Depth of the cabinet's top, mm: the leaning baffle takes some away, or adds some. */
export const topDepth = (speaker: Speaker): number =>
  speaker.depth - speaker.height * Math.tan(radians(speaker.baffleRake));
