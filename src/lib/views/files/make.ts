import type { CutState, Download } from './cutSet.svelte.ts';
import type { Subject } from '$lib/files/buildSheet/subject.ts';
import { once } from '$lib/project/once.ts';
import type { Fault } from '$lib/project/fault.ts';
import type { Project, Stock } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { Sheet } from '$lib/workshop/part.ts';

/** Plan, parts and sheets of what is shown. The writers are fetched with the first call. */
export async function makeCutFiles(shown: Plan, sheets: readonly Sheet[]): Promise<CutState> {
  const [{ cutFiles }, { planFile }, { solutionOf }] = await Promise.all([
    import('$lib/files/bundle.ts'),
    import('$lib/files/planFile.ts'),
    import('$lib/solution/solve.ts'),
  ]);
  const solution = solutionOf(shown);
  const made = await cutFiles(solution, sheets);
  if (!made.ok) return { kind: 'refused', faults: made.faults };
  // The plan holds all suggestions, which take a while to try: written when it is asked for.
  const plan = once(() => planFile(solution, made.value.sheets));
  const document: Download = {
    path: 'plan.json',
    get text() {
      return plan();
    },
  };
  return { kind: 'made', files: [document, ...made.value.cut] };
}

/** The project file of what was last sound. */
export async function makeProjectFile(project: Plan['project']): Promise<Download> {
  const [{ writeProject }, { fileStem }] = await Promise.all([
    import('$lib/files/projectFile.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  return { path: `${fileStem(project.title)}.json`, text: writeProject(project) };
}

/** Every file of what is shown in one archive, or why there is none. */
export async function makeArchive(
  shown: Plan,
  sheets: readonly Sheet[],
): Promise<
  | { readonly ok: true; readonly name: string; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly faults: readonly Fault[] }
> {
  const [{ solutionOf }, { allFiles }, { zipFile }, { fileStem }] = await Promise.all([
    import('$lib/solution/solve.ts'),
    import('$lib/files/allFiles.ts'),
    import('$lib/files/zip.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  const { project, layout } = shown;
  const made = await allFiles(solutionOf(shown), sheets);
  if (!made.ok) return made;
  return { ok: true, name: `${fileStem(`${project.title} - ${layout.name}`)}.zip`, bytes: zipFile(made.value.files) };
}

/** The build sheet of what is shown as a PDF. */
export async function makeBuildSheet(subject: Subject): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const [{ buildSheetPdf }, { fileStem }] = await Promise.all([
    import('$lib/files/buildSheet/buildSheetPdf.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  const { project, layout } = subject.plan;
  const bytes = buildSheetPdf(subject, project.display.length === 'in' ? 'Letter' : 'A4');
  return { name: `${fileStem(`${project.title} - ${layout.name} - build sheet`)}.pdf`, bytes };
}

/** The card for the sight check of what is shown, at full size. */
export async function makeSightCard(
  shown: Plan,
  format: 'pdf' | 'svg',
): Promise<{ readonly name: string; readonly content: string | Uint8Array }> {
  const [{ sightCard }, { sheetPdf }, { sheetSvg }, { fileStem }] = await Promise.all([
    import('$lib/files/sightCard.ts'),
    import('$lib/files/sheetPdf.ts'),
    import('$lib/files/sheetSvg.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  const { project, layout } = shown;
  const card = sightCard(shown, project.display.length === 'in' ? 'Letter' : 'A4');
  const name = `${fileStem(`${project.title} - ${layout.name} - sight card`)}.${format}`;
  return { name, content: format === 'pdf' ? sheetPdf(card) : sheetSvg(card) };
}

/** The coupon of one board, as SVG or DXF. */
export async function makeCoupon(stock: Stock, { display, cutter }: Project, format: 'svg' | 'dxf'): Promise<Download> {
  const [{ couponPlate }, { svgFile }, { dxfFile }, { fileStem }] = await Promise.all([
    import('$lib/files/couponPlate.ts'),
    import('$lib/files/svg.ts'),
    import('$lib/files/dxf.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  const plate = couponPlate(stock, display.length);
  const text = format === 'svg' ? svgFile(plate, cutter.colours) : await dxfFile(plate, cutter.colours);
  return { path: `${fileStem(plate.name)}.${format}`, text };
}
