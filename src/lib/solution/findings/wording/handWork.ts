import { says } from '$lib/project/sentence.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';

/** What is made by the cuts, the first of which the quantities are of. */
interface Cuts {
  readonly makes: readonly [string, ...string[]];
}

export const handWorkWordings = {
  /** `depth` and `bevel` of the first cut; `sawTilts` where its bevel is more; `bandSaw`: how high that cuts, where there is one. */
  'cut-by-hand': (
    {
      facts: { makes },
      quantities: { depth, bevel, saw, sawTilts, bandSaw },
    }: Told<'depth' | 'saw', Nothing, Cuts, 'bevel' | 'sawTilts' | 'bandSaw'>,
    { the }: Sides,
  ) => {
    const tilted = bevel ? says` and tilted by ${bevel}` : '';
    const tilts = sawTilts ? says`, its blade tilts to ${sawTilts}` : '';
    const band = bandSaw ? says`, and the band saw takes ${bandSaw}` : '';
    return says`No saw of this workshop makes these cuts of ${the} stand: ${makes.join(', ')}. The ${makes[0]} is ${depth} deep${tilted}; the table saw cuts ${saw}${tilts}${band}. They are made by hand; a band saw that reaches so far, or the stacked build, would spare that.`;
  },
};
