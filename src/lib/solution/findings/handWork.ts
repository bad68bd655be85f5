import { degrees, radians } from '$lib/geometry/angle.ts';
import { asAngle, asMm } from '$lib/project/sentence.ts';
import { sideNames, type Workshop } from '$lib/project/project.ts';
import type { SawCut } from '$lib/stand/saw.ts';
import type { Finding } from './finding.ts';
import type { Check } from './check.ts';

/** Cuts through a block of solid wood that no saw of the workshop makes. */
const handWork: Check = ({ blocks, tools }) =>
  sideNames.flatMap((side): Finding[] => {
    const cuts = blocks[side].flatMap((block) => block.cuts.filter(({ tool }) => tool === 'hand'));
    const [first, ...more] = cuts;
    if (!first) return [];
    return [
      {
        code: 'cut-by-hand',
        level: 'note',
        sides: [side],
        subject: {},
        facts: { makes: [first.makes, ...more.map(({ makes }) => makes)] },
        quantities: why(first, tools),
        value: cuts.length,
        limit: 0,
        unit: 'count',
        source: 'saws',
      },
    ];
  });

/** Why a cut is beyond the saws. */
const why = ({ depth, bevel }: SawCut, { saw, bandSaw }: Workshop) => ({
  depth: asMm(depth),
  saw: asMm(saw.depth),
  ...(bevel > 0 && { bevel: asAngle(degrees(bevel)) }),
  ...(bevel > radians(saw.tiltsMost) && { sawTilts: asAngle(saw.tiltsMost) }),
  ...(bandSaw && { bandSaw: asMm(bandSaw.height) }),
});

/** In the order in which they are told. */
export const handWorkChecks: readonly Check[] = [handWork];
