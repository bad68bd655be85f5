import type { Fault } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { differencesOf, type Difference } from './differences.ts';
import { measureOf, type Measure } from './measure.ts';
import { ranked } from './ranked.ts';
import { standFit, type StandFit } from './standsCut.ts';

/** Layouts of one project side by side. */
export interface Comparison {
  readonly layouts: readonly ComparedLayout[];
  readonly differs: readonly Difference[];
  /** Names of the layouts that are best and worst by each measure; none for a measure by which they do not differ. */
  readonly best: Readonly<Record<string, readonly string[]>>;
  readonly worst: Readonly<Record<string, readonly string[]>>;
  /** The stands of each layout used in each other one; pairs that have no answer are left out. */
  readonly stands: readonly StandFit[];
}

export interface ComparedLayout {
  readonly name: string;
  /** Whether it has a plan. */
  readonly ok: boolean;
  /** By the names of the measures; null where there is no plan, and where the measure has no answer. */
  readonly values: Readonly<Record<string, number | null>>;
  /** What the checks have to say, worst first; null unless a measure asks for the sound, which they need. */
  readonly findings: readonly Finding[] | null;
  /** Why there is no plan; null where there is one. */
  readonly reason: readonly Fault[] | null;
}

/**
 * Compares layouts of a project by some measures. A layout without an answer is in it with the reason. Pure; takes as long
 * as the dearest measure does for each layout. `layouts` must be of the project.
 */
export function compare(project: Project, layouts: readonly Layout[], by: readonly Measure[]): Comparison {
  const solved = layouts.map((layout) => ({ layout, solution: solve(project, layout, false) }));
  const compared = solved.map(({ layout, solution }): ComparedLayout => {
    const values = by.map((measure) => [measure.name, solution.ok ? measureOf(measure, solution.value, null) : null]);
    return {
      name: layout.name,
      ok: solution.ok,
      values: Object.fromEntries(values),
      findings: solution.ok && by.some(({ needs }) => needs === 'sound') ? solution.value.findings : null,
      reason: solution.ok ? null : solution.faults,
    };
  });
  const ranks = by.map((measure) => [measure.name, ranked(measure, compared)] as const);
  const named = (end: 'best' | 'worst') =>
    Object.fromEntries(ranks.flatMap(([name, ends]) => (ends === null ? [] : [[name, ends[end]]])));
  return {
    layouts: compared,
    differs: differencesOf(layouts),
    best: named('best'),
    worst: named('worst'),
    stands: fits(solved.flatMap(({ solution }) => (solution.ok ? [solution.value] : []))),
  };
}

const fits = (solutions: readonly Solution[]): StandFit[] =>
  solutions.flatMap((from) =>
    solutions.flatMap((to) => {
      const fit = from === to ? null : standFit(from, to);
      return fit === null ? [] : [fit];
    }),
  );
