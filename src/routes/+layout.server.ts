import { demoProject } from '$lib/project/demo.ts';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';

/** The example, checked when the site is built: the page need not fetch what checks it before it draws. */
export function load(): { readonly demo: Project } {
  const demo = checkProject(demoProject);
  if (!demo.ok) throw new Error(`The demo is not sound: ${demo.faults.map(faultLine).join('; ')}`);
  return { demo: demo.value };
}
