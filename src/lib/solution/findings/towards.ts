import type { EdgeName } from '$lib/stand/tipping.ts';

/** The way over each edge, as the loudspeaker faces. */
export const towards: Readonly<Record<EdgeName, string>> = {
  front: 'forwards',
  rear: 'backwards',
  inboard: 'inwards',
  outboard: 'outwards',
};
