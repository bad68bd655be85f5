import type { Finding } from '$lib/plan/document.ts';
import { harm } from './harm.ts';
import type { TriedSuggestion } from './suggestion.ts';

/** A finding as a person reads it: of both loudspeakers at once where they are alike, with what would answer it. */
export interface WholeFinding extends Finding {
  /** Null where nothing is known that would really make it better. */
  readonly suggestion: TriedSuggestion | null;
}

/**
 * Findings of several kinds as one list: worst first, else in their order; none twice, and one that both loudspeakers have
 * alike told once, of each. A suggestion goes with the first finding of its code, and one
 * that several codes share with the worst of them: one press does for all.
 */
export function wholeFindings(
  findings: readonly Finding[],
  suggestions: ReadonlyMap<string, TriedSuggestion> = new Map(),
): WholeFinding[] {
  const told = merged(findings).sort((a, b) => harm[a.level] - harm[b.level]);
  const shown = new Set<string>();
  return told.map((finding, index) => {
    const isFirst = told.findIndex(({ code }) => code === finding.code) === index;
    const suggestion = (isFirst && suggestions.get(finding.code)) || null;
    const edits = JSON.stringify(suggestion?.edits);
    const again = shown.has(edits);
    if (suggestion) shown.add(edits);
    return { ...finding, suggestion: again ? null : suggestion };
  });
}

function merged(findings: readonly Finding[]): Finding[] {
  const told: Finding[] = [];
  for (const finding of findings) {
    const text = ofEach(finding);
    const alike = told.findIndex((other) => other.code === finding.code && ofEach(other) === text);
    const before = told[alike];
    if (before === undefined) told.push(finding);
    else if (before.side !== finding.side) told[alike] = withoutSide({ ...before, text });
  }
  return told;
}

const withoutSide = ({ code, level, text, value, limit, unit, source }: Finding): Finding => ({
  code,
  level,
  text,
  value,
  limit,
  unit,
  source,
});

/** The text with `each` in place of the side that it speaks of. */
const ofEach = ({ side, text }: Finding): string =>
  side === undefined ? text : text.replaceAll(`The ${side} `, 'Each ').replaceAll(`the ${side} `, 'each ');
