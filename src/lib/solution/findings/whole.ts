import type { SideName } from '$lib/project/project.ts';
import { isAlike } from './alike.ts';
import type { Finding, FindingCode } from './finding.ts';
import { harm } from './harm.ts';
import type { TriedSuggestion } from './suggestion.ts';

/** A finding as a person reads it: of both loudspeakers at once where they are alike, with what would answer it. */
export type WholeFinding = Finding & {
  /** Null where nothing is known that would really make it better. */
  readonly suggestion: TriedSuggestion | null;
};

/**
 * Findings of several kinds as one list: worst first, else in their order; none twice, and one that both loudspeakers have
 * alike told once, of each. A suggestion goes with the first finding of its code, and one
 * that several codes share with the worst of them: one press does for all.
 */
export function wholeFindings(
  findings: readonly Finding[],
  suggestions: ReadonlyMap<FindingCode, TriedSuggestion> = new Map(),
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

/** Those that say the same of one loudspeaker and the other as one of both, in the place of the first. */
export function merged(findings: readonly Finding[]): Finding[] {
  const told: Finding[] = [];
  for (const finding of findings) {
    const alike = told.findIndex((other) => isAlike(other, finding));
    const before = told[alike];
    if (before === undefined) told.push(finding);
    else told[alike] = { ...before, sides: either(before.sides, finding.sides) };
  }
  return told;
}

const either = (some: readonly SideName[], others: readonly SideName[]): SideName[] => [
  ...some,
  ...others.filter((side) => !some.includes(side)),
];
