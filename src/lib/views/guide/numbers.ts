import { angleText, lengthText } from '$lib/project/lengthText.ts';
import type { Layout, Project } from '$lib/project/project.ts';

/** What the figures of the guide write on their dimension lines: the open project's own numbers. */
export interface GuideNumbers {
  readonly project: Project;
  readonly layout: Layout;
  /** A length as the project shows lengths; a dash for what is not there. */
  readonly mm: (value: number | null | undefined) => string;
  readonly degrees: (value: number) => string;
}

export const guideNumbers = (project: Project, layout: Layout): GuideNumbers => ({
  project,
  layout,
  mm: (value) => (value === null || value === undefined ? '–' : lengthText(value, project.display)),
  degrees: angleText,
});
