import type { Solution } from '$lib/solution/solution.ts';
import { cutList, quantityText } from '$lib/workshop/cutList.ts';
import type { Project } from '$lib/project/project.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import { takesOf } from '$lib/solution/sheets.ts';
import { plainText } from '$lib/project/sentence.ts';
import { buildSheetPdf } from './buildSheet/buildSheetPdf.ts';
import { materialsOf } from '$lib/solution/materials.ts';
import { cutListFile } from './cutListFile.ts';
import { fileStems } from './fileName.ts';
import type { Described, LeftOut } from './manifest.ts';
import type { PaperName } from './paper.ts';
import type { Plate } from './plate.ts';
import { materialsFile } from './materialsFile.ts';
import { partPlate } from './plates.ts';
import { sheetPdf } from './sheetPdf.ts';
import { sheetSvg } from './sheetSvg.ts';
import { sightCard } from './sightCard.ts';
import { bodyMesh } from './solid.ts';
import { standBodies, type StandBody } from './standBodies.ts';
import { stlFile } from './stl.ts';
import { templatePdf } from './templatePdf.ts';
import { threeMfFile, type NamedMesh } from './threeMf.ts';
import { blockPlates, toolFiles } from './toolFiles.ts';

export interface BenchFiles {
  readonly files: readonly Described[];
  readonly leftOut: readonly LeftOut[];
}

/** What goes to the bench beside the cut files: `templates/` to print, `solids/` to print in plastic, `cut-list.csv`,
 * the sight card and `build-sheet.pdf`. */
export async function benchFiles(solution: Solution, sheets: readonly Sheet[]): Promise<BenchFiles> {
  const { project, layout, parts } = solution;
  const paper: PaperName = project.display.length === 'in' ? 'Letter' : 'A4';
  const templates = templatesOf([...parts.map(partPlate), ...blockPlates(solution)], paper, project);
  const solids = solidsOf(standBodies(solution), `${project.title} - ${layout.name}`);
  const list: Described = {
    path: 'cut-list.csv',
    about:
      'Cut list: how many for each stand and for both; sizes, areas and cut lengths of one copy at its finished size',
    content: cutListFile(cutList(parts, takesOf(solution), sheets), project.display.length),
  };
  const tools = await toolFiles(solution);
  const sheet = buildSheetOf(solution, sheets, paper);
  return {
    files: [
      ...templates.files,
      ...solids.files,
      list,
      materialsOfLayout(solution, sheets),
      ...tools,
      ...sightCards(solution, paper),
      sheet,
    ],
    leftOut: [...templates.leftOut, ...solids.leftOut],
  };
}

function materialsOfLayout(solution: Solution, sheets: readonly Sheet[]): Described {
  const { project, layout } = solution;
  const about = 'Materials for both stands: boards, rods, glue, veneer, feet, pads, filament, sandpaper, clamps, cauls';
  const content = materialsFile(materialsOf(project, layout, solution, sheets), project.display.length);
  return { path: 'materials.csv', about, content };
}

/** To hold at the head when the stands are finished, and to aim a string or a pointer at. */
function sightCards(solution: Solution, paper: PaperName): readonly Described[] {
  const card = sightCard(solution, paper);
  const about = `Sight card at full size, to print at 100 % on ${paper} and to hold at the head: rings, safe zone and where each spot goes`;
  return [
    { path: 'sight-card.pdf', about, content: sheetPdf(card) },
    { path: 'sight-card.svg', about: `${about}; SVG in mm`, content: sheetSvg(card) },
  ];
}

function buildSheetOf(solution: Solution, sheets: readonly Sheet[], paper: PaperName): Described {
  const content = buildSheetPdf({ plan: solution, sheets }, paper);
  const about = `Everything to know at the bench, with drawings, on ${paper}`;
  return { path: 'build-sheet.pdf', about, content };
}

/** Paper follows the unit of the page: where inches are read, Letter is in the printer. */
function templatesOf(plates: readonly Plate[], paper: PaperName, { display }: Project): BenchFiles {
  const files: Described[] = [];
  const leftOut: LeftOut[] = [];
  const stems = fileStems(plates.map(({ name }) => name));
  for (const [i, plate] of plates.entries()) {
    const path = `templates/${stems[i]}.pdf`;
    const made = templatePdf(plate, paper, display.length);
    if (made.ok) {
      const about = `Template of ${plate.name} at full size, to print at 100 % on ${paper}`;
      files.push({ path, about, content: made.value });
    } else leftOut.push({ path, reason: made.faults.map(({ message }) => plainText(message)).join('; ') });
  }
  return { files, leftOut };
}

function solidsOf(bodies: readonly StandBody[], title: string): BenchFiles {
  const files: Described[] = [];
  const leftOut: LeftOut[] = [];
  const meshes: NamedMesh[] = [];
  const stems = fileStems(bodies.map(({ body }) => body.name));
  for (const [i, { body, what, ...counts }] of bodies.entries()) {
    const path = `solids/${stems[i]}.stl`;
    try {
      const mesh = bodyMesh(body);
      meshes.push({ name: body.name, mesh, copies: counts.quantity });
      const about = `${what}, to print: ${quantityText(counts)}; STL in mm`;
      files.push({ path, about, content: stlFile(mesh) });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      leftOut.push({ path, reason: error.message });
    }
  }
  const count = meshes.reduce((sum, { copies }) => sum + (copies ?? 1), 0);
  const all = { path: 'solids/stands.3mf', about: `Everything to print for both stands, ${count} in all; 3MF in mm` };
  return { files: meshes.length > 0 ? [...files, { ...all, content: threeMfFile(title, meshes) }] : files, leftOut };
}
