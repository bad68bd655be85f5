import type { CutState, TakeAway } from '$lib/state/cutSet.svelte.ts';
import type { Shown } from '$lib/state/settle.ts';

/** Plan, parts and sheets of what is shown. The writers are fetched with the first call. */
export async function makeCutFiles({ project, plan }: Shown): Promise<CutState> {
  const { cutFiles } = await import('$lib/files/bundle.ts');
  const made = await cutFiles(project, plan);
  if (!made.ok) return { kind: 'refused', faults: made.faults };
  return { kind: 'made', files: [{ path: 'plan.json', text: made.value.document }, ...made.value.cut] };
}

/** The project file of what was last sound. */
export async function makeProjectFile(project: Shown['project']): Promise<TakeAway> {
  const [{ writeProject }, { fileStem }] = await Promise.all([
    import('$lib/files/projectFile.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  return { path: `${fileStem(project.title)}.json`, text: writeProject(project) };
}

/** All files in one archive. */
export async function makeArchive(
  files: readonly TakeAway[],
  { project, layout }: Shown,
): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const [{ zipFile }, { fileStem }] = await Promise.all([
    import('$lib/files/zip.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  const bytes = zipFile(files.map(({ path, text }) => ({ path, content: text })));
  return { name: `${fileStem(`${project.title} - ${layout.name}`)}.zip`, bytes };
}
