import type { BuildName, StandBody } from './body.ts';
import { buildStacked } from './builds/stacked.ts';
import type { Commission } from './commission.ts';
import type { Outcome } from './outcome.ts';

/** Makes the body of a stand in one way. */
export type Builder = (commission: Commission) => Outcome<StandBody>;

/** What comes later than the rest: the project that a page opens first is built the one way that is always there. */
export type LateBuild = Exclude<BuildName, 'stacked'>;

const builders = new Map<BuildName, Builder>([['stacked', buildStacked]]);

/** Adds the ways to build that were not there at first. */
export function supplyBuilders(late: Readonly<Record<LateBuild, Builder>>): void {
  builders.set('skinned', late.skinned);
  builders.set('ribbed', late.ribbed);
  builders.set('solid', late.solid);
}

/** Throws where the builder has not been supplied: whoever reads projects imports `allBuilds.ts` before. */
export function builderOf(name: BuildName): Builder {
  const builder = builders.get(name);
  if (builder === undefined) throw new Error(`the builder of ${name} stands has not been supplied`);
  return builder;
}
