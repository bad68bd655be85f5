import type { BalancePlan, GivesWayPlan } from '$lib/solution/document.ts';
import {
  asAngle,
  asUnit,
  plainQuantity,
  says,
  type Piece,
  type Quantity,
  type Sentence,
} from '$lib/project/sentence.ts';
import { TEST_PLANE } from './testPlane.ts';
import { towards } from './towards.ts';

/** How one loudspeaker stands, in one sentence: by the least of what tips and what slides. */
export function verdict({ verdict: { holds, first, push }, slide }: BalancePlan): Sentence {
  const gives = givesText(first, slide);
  if (holds.most <= 0) return says`Does not stay even on the level: ${gives}.`;
  if (holds.least <= 0) return says`May not stay even on the level, depending on ${unknownOf(first)}: ${gives}.`;
  const [least, most] = [asAngle(holds.least), asAngle(holds.most)];
  const range = isToldAlike(least, most) ? least : says`${least} to ${most}, depending on ${unknownOf(first)}`;
  return says`Stays on a plane of ${range}, whichever way that is turned, where ${asAngle(TEST_PLANE)} is asked for; beyond, ${gives}${pushText()}.`;

  function pushText(): Piece {
    if (push === null) return '';
    const force = asUnit(push.force, 'N');
    return isSame(push.starts, first)
      ? says`, as at a push of ${force} at the cabinet’s top`
      : says`, and at a push of ${force} at the cabinet’s top ${givesText(push.starts, slide)}`;
  }
}

const isToldAlike = (a: Quantity, b: Quantity): boolean => plainQuantity(a) === plainQuantity(b);

const isSame = (a: GivesWayPlan, b: GivesWayPlan): boolean => a.how === b.how && a.what === b.what;

/** What a span comes from: sliding hangs on the friction, tipping on a mass that is not given. */
const unknownOf = ({ how }: GivesWayPlan): string => (how === 'slides' ? 'the friction' : 'the cabinet’s mass');

function givesText({ how, what, towards: edge }: GivesWayPlan, { stop }: BalancePlan['slide']): string {
  const way = edge === null ? '' : ` ${towards[edge]}`;
  if (how === 'tips')
    return what === 'cabinet' ? `the cabinet tips${way} off its stand` : `cabinet and stand tip${way} together`;
  if (what === 'both') return 'the stand slides on the desk';
  return stop ? 'the cabinet slides sideways along its stop' : `the cabinet slides${way} on its slope`;
}
