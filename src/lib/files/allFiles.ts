import type { Solution } from '$lib/solution/solution.ts';
import { failure, success, unforeseen, type Result } from '$lib/project/fault.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import { benchFiles } from './benchFiles.ts';
import { cutFiles } from './bundle.ts';
import { manifest, type Described } from './manifest.ts';
import { planFile } from './planFile.ts';
import { writeProject } from './projectFile.ts';
import type { ZipEntry } from './zip.ts';

export interface AllFiles {
  /** The plan with its sheets, as `plan.json` holds it. */
  readonly document: string;
  /** Everything to write or to pack, `plan.json` first and the manifest last. */
  readonly files: readonly ZipEntry[];
}

/**
 * Every file of one layout: `plan.json`, `project.json`, `sheets/`, `parts/`, `templates/`, `solids/`, `cut-list.csv`, `coupons/`,
 * `gauges/`, `sight-card.pdf`, `build-sheet.pdf` and the list of them in `manifest.json`. The same project always gives the same bytes. Refused as `cutFiles`; a template or a solid that
 * cannot be made is left out, and the manifest says why. `laid`: as for `cutFiles`.
 */
export async function allFiles(solution: Solution, laid: readonly Sheet[] | null = null): Promise<Result<AllFiles>> {
  try {
    return await allFilesOf(solution, laid);
  } catch (error) {
    return failure(unforeseen(error));
  }
}

async function allFilesOf(solution: Solution, laid: readonly Sheet[] | null): Promise<Result<AllFiles>> {
  const { project, layout } = solution;
  const cut = await cutFiles(solution, laid);
  if (!cut.ok) return cut;
  const { sheets } = cut.value;
  const document = planFile(solution, sheets);
  const bench = await benchFiles(solution, sheets);
  const files: Described[] = [
    {
      path: 'plan.json',
      about: 'Every number and finding of the layout, and where each part lies on its sheet',
      content: document,
    },
    {
      path: 'project.json',
      about: 'The project file that all of this is made from: open it in Wedgewright to change anything',
      content: writeProject(project),
    },
    ...cut.value.cut.map(({ path, about, text }) => ({ path, about, content: text })),
    ...bench.files,
  ];
  const subject = { project: project.title, layout: layout.name };
  const list = { path: 'manifest.json', content: await manifest(subject, files, bench.leftOut) };
  return success({ document, files: [...files.map(({ path, content }) => ({ path, content })), list] });
}
