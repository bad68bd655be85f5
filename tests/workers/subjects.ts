import type { Plan } from '$lib/solution/document.ts';
import { settleProject } from '$lib/document/settle.ts';
import type { Subject } from '$lib/workers/jobs.ts';
import { project } from '../projects.ts';

/** The demo with some values set, as a page shows it. */
export function shownOf(changes: Readonly<Record<string, unknown>> = {}): Plan {
  const { shown } = settleProject(project(changes), 0);
  if (!shown) throw new Error('the demo has an answer');
  return shown;
}

export const subjectOf = ({ project, layoutIndex }: Plan): Subject => ({ project, layoutIndex });
