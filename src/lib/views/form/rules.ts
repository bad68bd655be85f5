import { toe } from '$lib/project/fields/aim.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import type { SidePlan } from '$lib/solution/document.ts';

/** A rule as the document holds it. */
export interface Rule {
  readonly rule: string;
  readonly distance?: number;
  readonly degrees?: number;
}

/** A chosen rule starts where the drawing stands now, to the tenth of a degree that a person would type. */
const readable = (degrees: number): number => Math.round(degrees * 10) / 10 || 0;

/** The toe rule that a choice stands for, with a start for its own number. */
export function toeRule(rule: string, side: SidePlan | undefined): Rule {
  if (rule === 'behind-head') return { rule, ...startOf({ distance: toe.distance }) };
  return rule === 'as-set' ? { rule, degrees: readable(side?.toe ?? 0) } : { rule };
}

/** The tilt rule that a choice stands for, with a start for its own number. */
export const tiltRule = (rule: string, side: SidePlan | undefined): Rule =>
  rule === 'tilt-to-ear' ? { rule } : { rule, degrees: readable(side?.tilt ?? 0) };
