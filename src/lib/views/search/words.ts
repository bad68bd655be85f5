import { aim } from '$lib/project/fields/aim.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { RulePointer } from '$lib/study/freeRule.ts';
import type { AimRule } from '$lib/study/input.ts';
import type { Measure } from '$lib/study/measure.ts';
import { valueText } from '$lib/views/study/measureText.ts';
import type { Dimension } from './dimensions.ts';

/** A count, its thousands apart. */
export const countText = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');

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

/** A value of something that candidates differ in: its rule, or the number with its unit. */
export const dimensionText = ({ rules, unit }: Pick<Dimension, 'rules' | 'unit'>, value: number, display: LengthDisplay): string => {
  const rule = rules?.[Math.round(value)];
  return rule ? ruleText(rule, display) : valueText(value, unit, display);
}; // prettier-ignore

/** What each measure is called in a layout's name. */
const SHORT: Readonly<Record<string, (value: string) => string>> = {
  'triangle-error': (value) => `${value} off 60°`,
  move: (value) => `moved ${value}`,
  'stand-height': (value) => `${value} high`,
  'safe-zone': (value) => `safe zone ${value}`,
  'desk-level': (value) => `desk ${value}`,
};

/** A name that says what a layout is: `0.4° off 60°, moved 87 mm`. */
export const nameOf = (
  aims: readonly Measure[],
  values: Readonly<Record<string, number | null>>,
  display: LengthDisplay,
): string =>
  aims
    .slice(0, 2)
    .flatMap(({ name, label, unit }) => {
      const value = values[name] ?? null;
      if (value === null) return [];
      const text = valueText(value, unit, display).replaceAll('\u202f', ' ');
      return [SHORT[name]?.(text) ?? `${label.toLowerCase()} ${text}`];
    })
    .join(', ') || 'searched';
