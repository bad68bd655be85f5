import type { Plan } from '$lib/solution/document.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';

/** What a sheet is made from. */
export interface SheetSource {
  readonly project: Project;
  readonly layout: Layout;
  readonly layoutIndex: number;
  readonly plan: Plan;
  /** Whose loudspeaker the side view, the front view and the isometric one show. */
  readonly side: SideName;
  /** Another layout's, laid faintly over the views; nothing is where it is left out. */
  readonly over?: Plan | null;
}
