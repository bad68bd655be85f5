import * as v from 'valibot';
import { projectSchema } from '$lib/project/schema.ts';
import type { Project } from '$lib/project/project.ts';

/**
 * The project as the text of a project file: JSON with two spaces, keys in the schema's order whatever order the
 * project's own objects have them in, so that equal projects give equal files.
 *
 * @throws v.ValiError for a project that its own schema would refuse: a file that cannot be read back is not written.
 */
export function writeProject(project: Project): string {
  return `${JSON.stringify(v.parse(projectSchema, project), null, 2)}\n`;
}
