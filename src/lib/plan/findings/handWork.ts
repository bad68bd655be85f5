import { degrees, radians } from '$lib/geometry/angle.ts';
import { sideNames, type Workshop } from '$lib/project/project.ts';
import type { SawCut } from '$lib/stand/saw.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { Check } from './check.ts';
import { degreesText, mmText } from './say.ts';

/** Cuts through a block of solid wood that no saw of the workshop makes. */
export const handWork: Check = ({ blocks, tools }) =>
  sideNames.flatMap((side): Finding[] => {
    const cuts = blocks[side].flatMap((block) => block.cuts.filter(({ tool }) => tool === 'hand'));
    const [first] = cuts;
    if (!first) return [];
    const all = cuts.map(({ makes }) => makes).join(', ');
    return [
      {
        code: 'cut-by-hand',
        level: 'note',
        side,
        text: `No saw of this workshop makes these cuts of the ${side} stand: ${all}. ${why(first, tools)} They are made by hand; a band saw that reaches so far, or the stacked build, would spare that.`,
        value: cuts.length,
        limit: 0,
        unit: '',
        source: 'the saws of “Machines and glue”',
      },
    ];
  });

function why({ makes, depth, bevel }: SawCut, { saw, bandSaw }: Workshop): string {
  const tilts = bevel > radians(saw.tiltsMost) ? `, its blade tilts to ${degreesText(saw.tiltsMost)}` : '';
  const band = bandSaw ? `, and the band saw takes ${mmText(bandSaw.height)}` : '';
  const tilted = bevel > 0 ? ` and tilted by ${degreesText(degrees(bevel))}` : '';
  return `The ${makes} is ${mmText(depth)} deep${tilted}; the table saw cuts ${mmText(saw.depth)}${tilts}${band}.`;
}
