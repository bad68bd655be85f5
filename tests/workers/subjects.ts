import type { Solution } from '$lib/plan/solution.ts';
import { settleProject } from '$lib/state/settle.ts';
import type { Subject } from '$lib/workers/jobs.ts';
import { project } from '../projects.ts';

/** The demo with some values set, as a page shows it. */
export function shownOf(changes: Readonly<Record<string, unknown>> = {}): Solution {
  const { shown } = settleProject(project(changes), 0);
  if (!shown) throw new Error('the demo has an answer');
  return shown;
}

export const subjectOf = ({ project, layoutIndex }: Solution): Subject => ({ project, layoutIndex });
