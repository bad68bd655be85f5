import { pointerTo, type Result } from '$lib/project/fault.ts';
import type { SideName } from '$lib/project/project.ts';
import { layOut } from '$lib/workshop/nesting/layOut.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Take } from '$lib/workshop/standParts.ts';
import type { Plan } from './document.ts';

/** How the parts lie on their sheets, as the layout wants them: see `layOut`. */
export const sheetsOf = ({
  project,
  layout,
  layoutIndex,
  parts,
}: Pick<Plan, 'project' | 'layout' | 'layoutIndex' | 'parts'>): Result<readonly Sheet[]> =>
  layOut(parts, project, layout.arrangement, pointerTo('layouts', layoutIndex, 'arrangement'));

/** What each stand takes of the parts. */
export const takesOf = ({ stand }: Pick<Plan, 'stand'>): Readonly<Record<SideName, readonly Take[]>> => ({
  left: stand.left.pieces,
  right: stand.right.pieces,
});
