import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { startProject } from '$lib/project/start.ts';
import { displayOf } from './displayChoice.ts';

/**
 * A project of default sizes, none of them measured, that shows lengths by a choice of the unit.
 * @throws Error were the program's own start not sound.
 */
export function startOwn(choice: string): Project {
  const checked = checkProject({ ...startProject, display: displayOf(choice) });
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('; '));
  return checked.value;
}
