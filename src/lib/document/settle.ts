import type { Plan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import { failure, unforeseen, type Fault, type Result } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';

/** Where an open project stands after an edit. */
export interface Settled {
  /** The document as typed: plain JSON, sound or not. */
  readonly draft: unknown;
  /** The last draft that was a sound project. */
  readonly project: Project;
  /** Whether that is the draft. */
  readonly sound: boolean;
  /** The last answer for the chosen layout; null when it never had one. */
  readonly shown: Plan | null;
  /** What is wrong with the draft, or why its geometry has no answer. Empty: `shown` is the draft's. */
  readonly faults: readonly Fault[];
}

/** Tells a sound project from any other document. */
export type Check = (draft: unknown) => Result<Project>;

/**
 * What a draft comes to, given where the project stood before: the last sound state outlives an unsound draft. Never throws,
 * whatever the check does, or an edit would be lost.
 */
export function settle(draft: unknown, layoutIndex: number, before: Settled, check: Check = checkProject): Settled {
  const checked = safely(() => check(draft));
  const kept = before.shown?.layoutIndex === layoutIndex ? before.shown : null;
  if (!checked.ok) {
    return {
      draft,
      project: before.project,
      sound: false,
      shown: kept ?? answer(before.project, layoutIndex).shown,
      faults: checked.faults,
    };
  }
  const { shown, faults } = answer(checked.value, layoutIndex);
  return { draft, project: checked.value, sound: true, shown: shown ?? kept, faults };
}

/** Where a sound project stands when it opens. */
export function settleProject(project: Project, layoutIndex: number): Settled {
  return { draft: project, project, sound: true, ...answer(project, layoutIndex) };
}

/** What a check says; where it throws, that. */
function safely<Value>(check: () => Result<Value>): Result<Value> {
  try {
    return check();
  } catch (error) {
    return failure(unforeseen(error));
  }
}

function answer(project: Project, layoutIndex: number): Pick<Settled, 'shown' | 'faults'> {
  const layout = project.layouts[layoutIndex];
  if (layout === undefined) return { shown: null, faults: [] };
  const outcome = plan(project, layout);
  return outcome.ok ? { shown: outcome.value, faults: [] } : { shown: null, faults: outcome.faults };
}
