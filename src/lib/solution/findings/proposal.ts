import type { Sentence } from '$lib/project/sentence.ts';
import type { Solution } from '$lib/solution/solution.ts';
import type { Finding } from './finding.ts';
import type { LayoutChange } from './suggestion.ts';

/** A change that may answer a finding, not tried yet. */
export interface Proposal {
  readonly label: Sentence;
  readonly change: LayoutChange;
}

/** What a proposal is made from: a solution, and its findings of one code. */
export interface Case {
  readonly of: Solution;
  readonly findings: readonly Finding[];
  /** The solution with a change; null when it has none. */
  readonly at: (change: LayoutChange) => Solution | null;
  /** Those of its findings that hang on where things are: quickly seen, and null only where it has no answer. */
  readonly placed: (change: LayoutChange) => readonly Finding[] | null;
}
