import type { Result } from '$lib/project/fault.ts';
import { success } from '$lib/project/fault.ts';
import type { Project } from '$lib/project/project.ts';

/** The address of a page with the project in it: of this one, or at another path of the site. */
export async function makeLink(
  project: Project,
  { origin, pathname }: Pick<Location, 'origin' | 'pathname'>,
): Promise<Result<string>> {
  const { writeLink } = await import('$lib/files/link.ts');
  const fragment = await writeLink(project);
  return fragment.ok ? success(`${origin}${pathname}#${fragment.value}`) : fragment;
}

/** Whether the text is on the clipboard now. Browsers refuse for many reasons; none of them is an error. */
export async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
