import type { Plan } from '$lib/plan/document.ts';
import { plan } from '$lib/plan/plan.ts';
import type { Fault, Result } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';

/** A project with an answer: what is drawn, and what files are made from. */
export interface Shown {
  readonly project: Project;
  readonly layout: Layout;
  readonly layoutIndex: number;
  readonly plan: Plan;
}

/** Where an open project stands after an edit. */
export interface Settled {
  /** The document as typed: plain JSON, sound or not. */
  readonly draft: unknown;
  /** The last draft that was a sound project. */
  readonly project: Project;
  /** The last answer for the chosen layout; null when it never had one. */
  readonly shown: Shown | null;
  /** What is wrong with the draft, or why its geometry has no answer. Empty: `shown` is the draft's. */
  readonly faults: readonly Fault[];
}

/** What tells a sound project from any other document. */
export type Check = (draft: unknown) => Result<Project>;

/** What a draft comes to, given where the project stood before: the last sound state outlives an unsound draft. */
export function settle(draft: unknown, layoutIndex: number, before: Settled, check: Check): Settled {
  const checked = check(draft);
  const kept = before.shown?.layoutIndex === layoutIndex ? before.shown : null;
  if (!checked.ok) {
    return {
      draft,
      project: before.project,
      shown: kept ?? answer(before.project, layoutIndex).shown,
      faults: checked.faults,
    };
  }
  const { shown, faults } = answer(checked.value, layoutIndex);
  return { draft, project: checked.value, shown: shown ?? kept, faults };
}

/** Where a sound project stands when it opens. */
export function settleProject(project: Project, layoutIndex: number): Settled {
  return { draft: project, project, ...answer(project, layoutIndex) };
}

function answer(project: Project, layoutIndex: number): Pick<Settled, 'shown' | 'faults'> {
  const layout = project.layouts[layoutIndex];
  if (layout === undefined) return { shown: null, faults: [] };
  const outcome = plan(project, layout);
  return outcome.ok
    ? { shown: { project, layout, layoutIndex, plan: outcome.value }, faults: [] }
    : { shown: null, faults: outcome.faults };
}
