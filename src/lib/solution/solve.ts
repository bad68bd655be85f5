import { once } from '$lib/project/once.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import type { Plan } from './document.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import { allFindings, suggestionsFor } from '$lib/solution/findings/suggest.ts';
import { howSure } from './howSure.ts';
import type { Outcome } from './outcome.ts';
import { plan } from './plan.ts';
import { sheetsOf } from './sheets.ts';
import type { Solution } from './solution.ts';
import { soundOf } from './sound.ts';

/** The one door to results. Refused as `plan` is; nothing is thrown. Pure. `advice`: see there. */
export function solve(project: Project, layout: Layout, advice = true): Outcome<Solution> {
  const planned = plan(project, layout, advice);
  return planned.ok ? { ok: true, value: solutionOf(planned.value) } : planned;
}

const solutions = new WeakMap<Plan, Solution>();

/** The solution that a plan is part of: one for each plan, so that nothing is worked out twice. */
export function solutionOf(plan: Plan): Solution {
  const known = solutions.get(plan);
  if (known) return known;
  const sound = once(() => soundOf(plan.project, plan.layout, plan));
  const sure = once(() => howSure(plan.project, plan.layout, plan));
  const findings = once((): readonly Finding[] => allFindings(solution));
  const suggestions = once((): Solution['suggestions'] => suggestionsFor(solution, solve));
  const sheets = once(() => sheetsOf(plan));
  const solution: Solution = withMembers(plan, {
    get sound() {
      return sound();
    },
    get sure() {
      return sure();
    },
    get findings() {
      return findings();
    },
    get suggestions() {
      return suggestions();
    },
    get sheets() {
      return sheets();
    },
  });
  solutions.set(plan, solution);
  return solution;
}

/** One object with the members of two, none of them read. */
const withMembers = <Of extends object, More extends object>(of: Of, more: More): Of & More =>
  Object.defineProperties(
    {},
    { ...Object.getOwnPropertyDescriptors(of), ...Object.getOwnPropertyDescriptors(more) },
  ) as Of & More;
