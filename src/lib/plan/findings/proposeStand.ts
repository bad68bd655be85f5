import { radians } from '$lib/geometry/angle.ts';
import { balanceWith, stopRemedy, tipRemedies, type Remedy } from '$lib/stand/remedy.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Case, Proposal } from './proposals.ts';
import { mmText } from './say.ts';

const labels: Record<Remedy['key'], (text: string) => string> = {
  frontMargin: (text) => `Let the stands reach ${text} beyond the front`,
  rearMargin: (text) => `Let the stands reach ${text} beyond the back`,
  width: (text) => `Make the stands ${text} wide`,
  lift: (text) => `Lower the lift to ${text}`,
  stop: (text) => `Add a stop ${text} high`,
};

const proposalOf = (remedy: Remedy): Proposal => ({
  label: labels[remedy.key](mmText(remedy.key === 'stop' ? remedy.value.height : remedy.value)),
  change: { stand: { [remedy.key]: remedy.value } },
});

const sidesOf = ({ findings }: Case): SideName[] => findings.flatMap(({ side }) => (side === undefined ? [] : [side]));

/** Stands that tip: what is enough for one side is tried for both, as they share their settings. */
export function steadied(of: Case): Proposal[] {
  const { project, layout, plan, findings } = of;
  const { speaker } = project;
  // Every finding of a stand that tips is held against the same plane.
  const test = radians(findings[0]?.limit ?? 0);
  return sidesOf(of).flatMap((side) => {
    const stock = project.stock.find(({ name }) => name === plan.stand[side].stock);
    if (!stock) return [];
    const site = { speaker, layout, side, stock };
    const now = balanceWith(site, {});
    return now ? tipRemedies(site, now, test).map(proposalOf) : [];
  });
}

/** Cabinets that friction holds barely or not at all. */
export function gripped(of: Case): Proposal[] {
  const { project, layout, plan } = of;
  return sidesOf(of).flatMap((side) => {
    const { tilt, lift } = plan.sides[side];
    const stop = stopRemedy(layout.stand, project.speaker.depth, { tilt: radians(tilt), lift });
    return stop ? [proposalOf(stop)] : [];
  });
}
