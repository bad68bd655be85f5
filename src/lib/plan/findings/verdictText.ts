import type { BalancePlan, GivesWayPlan } from '$lib/plan/document.ts';
import { degreesText, newtonText } from './say.ts';
import { TEST_PLANE } from './testPlane.ts';
import { towards } from './towards.ts';

/** How one loudspeaker stands, in one sentence: by the least of what tips and what slides. */
export function verdictText({ verdict: { holds, first, push }, slide }: BalancePlan): string {
  const gives = givesText(first, slide);
  if (holds.most <= 0) return `Does not stay even on the level: ${gives}.`;
  if (holds.least <= 0) return `May not stay even on the level, depending on ${unknownOf(first)}: ${gives}.`;
  const [least, most] = [degreesText(holds.least), degreesText(holds.most)];
  const range = least === most ? least : `${least} to ${most}, depending on ${unknownOf(first)}`;
  return `Stays on a plane of ${range}, whichever way that is turned, where ${TEST_PLANE}° is asked for; beyond, ${gives}${pushText()}.`;

  function pushText(): string {
    if (push === null) return '';
    const force = newtonText(push.force);
    return isSame(push.starts, first)
      ? `, as at a push of ${force} at the cabinet’s top`
      : `, and at a push of ${force} at the cabinet’s top ${givesText(push.starts, slide)}`;
  }
}

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
