import { aim } from '$lib/project/fields/aim.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { RulePointer } from '$lib/study/freeRule.ts';
import type { AimRule } from '$lib/study/input.ts';
import { valueText } from '$lib/views/study/measureText.ts';

export const ruleLabels: Readonly<Record<RulePointer, string>> = {
  '/aim/toe': `${aim.toe.label}, rule`,
  '/aim/tilt': `${aim.tilt.label}, rule`,
};

/** A rule of toe or tilt in words, with its own number: `to meet 300 mm behind the head`. */
export function ruleText(rule: AimRule, display: LengthDisplay): string {
  if ('distance' in rule) return `to meet ${valueText(rule.distance, 'mm', display)} behind the head`;
  const [, words = rule.rule] = [...aim.toe.options, ...aim.tilt.options].find(([name]) => name === rule.rule) ?? [];
  return 'degrees' in rule ? `${words}, ${valueText(rule.degrees, '°', display)}` : words;
}
