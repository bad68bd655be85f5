import { radians } from '$lib/geometry/angle.ts';
import { balanceWith, stopRemedy, tipRemedies, type Remedy } from '$lib/stand/remedy.ts';
import { asMm, says } from '$lib/project/sentence.ts';
import { toTape } from '$lib/project/tape.ts';
import type { SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import type { Case, Proposal } from './proposal.ts';
import { stopToTape } from './stopSize.ts';
import { addStopText } from '$lib/solution/findings/wording/standing.ts';

/** A remedy as a person makes it: no less than is needed, as far as the tape shows, and said as a change of what is. */
function proposalOf(remedy: Remedy, { of: { project, layout } }: Case): Proposal {
  const { display } = project;
  const speaker = asStood(project.speaker);
  const { stand } = layout;
  switch (remedy.key) {
    case 'stop': {
      const value = stopToTape(remedy.value, display);
      return {
        label: addStopText(asMm(value.height), asMm(value.thickness)),
        change: { stand: { stop: value } },
      };
    }
    case 'width': {
      const value = toTape(remedy.value, display, 'up');
      const wider = value - (stand.width ?? speaker.width);
      return {
        label: says`Make the stands ${asMm(wider)} wider, ${asMm(value)} in all`,
        change: { stand: { width: value } },
      };
    }
    case 'lift': {
      const value = toTape(remedy.value, display, 'down');
      return {
        label: says`Lower the lift by ${asMm((stand.lift ?? value) - value)}, to ${asMm(value)}`,
        change: { stand: { lift: value } },
      };
    }
    case 'frontMargin':
    case 'rearMargin': {
      const value = toTape(remedy.value, display, 'up');
      const end = remedy.key === 'frontMargin' ? 'front' : 'back';
      return {
        label: says`Let the stands reach ${asMm(value - stand[remedy.key])} further beyond the ${end}`,
        change: { stand: { [remedy.key]: value } },
      };
    }
  }
}

const sidesOf = ({ findings }: Case): SideName[] => findings.flatMap(({ sides }) => sides);

/** Stands that tip: what is enough for one side is tried for both, as they share their settings. */
export function steadied(of: Case): Proposal[] {
  const { of: solution, findings } = of;
  const { project, layout } = solution;
  const speaker = asStood(project.speaker);
  // Every finding of a stand that tips is held against the same plane.
  const test = radians(findings[0]?.limit ?? 0);
  return sidesOf(of).flatMap((side) => {
    const stock = project.stock.find(({ name }) => name === solution.stand[side].stock);
    if (!stock) return [];
    const site = { speaker, layout, side, stock };
    const now = balanceWith(site, {});
    return now ? tipRemedies(site, now, test).map((remedy) => proposalOf(remedy, of)) : [];
  });
}

/** Cabinets that friction holds barely or not at all. */
export function gripped(of: Case): Proposal[] {
  const { project, layout, sides } = of.of;
  return sidesOf(of).flatMap((side) => {
    const { tilt, lift } = sides[side];
    const stop = stopRemedy(layout.stand, asStood(project.speaker).depth, { tilt: radians(tilt), lift });
    return stop ? [proposalOf(stop, of)] : [];
  });
}
