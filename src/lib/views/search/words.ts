import type { LengthDisplay } from '$lib/project/units.ts';
import type { Measure } from '$lib/study/measure.ts';
import { valueText } from '$lib/views/study/measureText.ts';
import type { Dimension } from './dimensions.ts';
import { ruleText } from './ruleWords.ts';

/** A count, its thousands apart. */
export const countText = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');

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
