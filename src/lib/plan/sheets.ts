import { pointerTo, type Result } from '$lib/project/fault.ts';
import { layOut } from '$lib/workshop/layOut.ts';
import type { Plan } from './document.ts';
import type { Project, SideName } from '$lib/project/project.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Take } from '$lib/workshop/standParts.ts';

/** How the parts of a planned layout lie on their sheets, as its project wants them: see `layOut`. */
export function sheetsOf(project: Project, { parts, layout: name }: Plan): Result<readonly Sheet[]> {
  const index = project.layouts.findIndex((layout) => layout.name === name);
  const arrangement = project.layouts[index]?.arrangement ?? null;
  return layOut(parts, project, arrangement, pointerTo('layouts', index, 'arrangement'));
}

/** What each stand takes of the plan's parts. */
export const takesOf = ({ stand }: Pick<Plan, 'stand'>): Readonly<Record<SideName, readonly Take[]>> => ({
  left: stand.left.pieces,
  right: stand.right.pieces,
});
