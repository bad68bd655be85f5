import type { Fault } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import type { Outcome } from '$lib/solution/outcome.ts';
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
  /** By the names of the measures; null where there is no plan, and where the measure has no answer. The rest is to come. */
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
export const compare = (project: Project, layouts: readonly Layout[], by: readonly Measure[]): Comparison =>
  toTheEnd(compareSteps(project, layouts, by));

/** What is worked out together, the cheapest first: each takes many times as long as what comes before it. */
const STAGES: readonly (readonly Measure['needs'][])[] = [['aim', 'bodies', 'stands'], ['heard', 'sound'], ['sheets']];

type CompareStep = { readonly share: number } | { readonly answer: Comparison };

/**
 * The same in steps: what is quickly known first, then with the measures and the findings of the sound, last with the sheets.
 * Until then a layout has no value at all by the measures to come. The share done counts from the start of each stage.
 */
export function* compareSteps(
  project: Project,
  layouts: readonly Layout[],
  by: readonly Measure[],
): Generator<CompareStep, Comparison> {
  const solved = layouts.map((layout) => solve(project, layout, false));
  const stages = STAGES.map((needs) => by.filter((measure) => needs.includes(measure.needs))).filter(hasSome);
  const differs = differencesOf(layouts);
  const stands = fits(solved.flatMap((solution) => (solution.ok ? [solution.value] : [])));
  let known: readonly Measure[] = [];
  let compared = layouts.map(({ name }, index): ComparedLayout => {
    const solution = solved[index];
    return { name, ok: solution?.ok === true, values: {}, findings: null, reason: reasonOf(solution) };
  });
  for (const [stage, measures] of stages.entries()) {
    known = [...known, ...measures];
    const tellsFindings = measures.some(({ needs }) => needs === 'sound');
    const worked: ComparedLayout[] = [];
    for (const [index, layout] of compared.entries()) {
      worked.push(withValues(layout, solved[index], measures, tellsFindings));
      if (stage > 0) yield { share: (index + 1) / layouts.length };
    }
    compared = worked;
    if (stage < stages.length - 1)
      yield { answer: { layouts: compared, differs, ...ranksOf(known, compared), stands } };
  }
  return { layouts: compared, differs, ...ranksOf(by, compared), stands };
}

const hasSome = (measures: readonly Measure[]): boolean => measures.length > 0;

const reasonOf = (solution: Outcome<Solution> | undefined): readonly Fault[] | null =>
  solution === undefined || solution.ok ? null : solution.faults;

function withValues(
  layout: ComparedLayout,
  solution: Outcome<Solution> | undefined,
  measures: readonly Measure[],
  tellsFindings: boolean,
): ComparedLayout {
  const solved = solution?.ok ? solution.value : null;
  const values = measures.map((measure) => [measure.name, solved && measureOf(measure, solved, null)] as const);
  return {
    ...layout,
    values: { ...layout.values, ...Object.fromEntries(values) },
    findings: tellsFindings && solved ? solved.findings : layout.findings,
  };
}

function ranksOf(by: readonly Measure[], compared: readonly ComparedLayout[]): Pick<Comparison, 'best' | 'worst'> {
  const ranks = by.map((measure) => [measure.name, ranked(measure, compared)] as const);
  const named = (end: 'best' | 'worst') =>
    Object.fromEntries(ranks.flatMap(([name, ends]) => (ends === null ? [] : [[name, ends[end]]])));
  return { best: named('best'), worst: named('worst') };
}

const fits = (solutions: readonly Solution[]): StandFit[] =>
  solutions.flatMap((from) =>
    solutions.flatMap((to) => {
      const fit = from === to ? null : standFit(from, to);
      return fit === null ? [] : [fit];
    }),
  );
