import { lengthWithUnit } from '$lib/project/lengthText.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { cutterFor, cutterOf } from '$lib/workshop/beam.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { takesOf } from '$lib/solution/sheets.ts';
import { failure, success, unforeseen, type Result } from '$lib/project/fault.ts';
import type { LayerColours, Project } from '$lib/project/project.ts';
import { alikeSheets } from '$lib/workshop/nesting/alikeSheets.ts';
import { sheetName, type Sheet } from '$lib/workshop/part.ts';
import { cutList, quantityText } from '$lib/workshop/cutList.ts';
import { dxfFile } from './dxf.ts';
import { fileStems } from './fileName.ts';
import { partPlate, sheetPlate } from './plates.ts';
import type { Plate } from './plate.ts';
import { svgFile } from './svg.ts';

/** One file of the cut set. */
export interface CutFile {
  /** Below the folder written to, `/` between the parts: `parts/slice.svg`. */
  readonly path: string;
  /** What it is, in words. */
  readonly about: string;
  readonly text: string;
}

export interface CutFiles {
  /** Part and sheet drawings, SVG and DXF of each. */
  readonly cut: readonly CutFile[];
  /** How the parts lie, turns in radians. */
  readonly sheets: readonly Sheet[];
}

/**
 * Every file of one layout: `parts/` at finished size, `sheets/` nested with the kerf taken into account. Refused with
 * pointers from the project when a part is larger than its sheet, when the kerf swallows a hole, or when the program itself
 * fails: nothing is thrown.
 *
 * @param laid how the parts lie, where that has been found already; checked like any other. Default: as the solution has them.
 */
export async function cutFiles(solution: Solution, laid: readonly Sheet[] | null = null): Promise<Result<CutFiles>> {
  try {
    return await cutFilesOf(solution, laid);
  } catch (error) {
    return failure(unforeseen(error));
  }
}

async function cutFilesOf(solution: Solution, laid: readonly Sheet[] | null): Promise<Result<CutFiles>> {
  const { project } = solution;
  const sheets = laid === null ? solution.sheets : checked(laid, solution);
  if (!sheets.ok) return sheets;
  const nested = sheetPlates(sheets.value, solution);
  if (!nested.ok) return nested;
  const parts = namedParts(solution);
  const drawings = await Promise.all(
    [...parts, ...nested.value].map((named) => bothFormats(named, project.cutter.colours)),
  );
  return success({ cut: drawings.flat(), sheets: sheets.value });
}

function checked(sheets: readonly Sheet[], { project: { cutter }, parts }: Solution): Result<readonly Sheet[]> {
  const faults = layoutFaults(sheets, parts, cutter.spacing, cutter.margin);
  return faults.length > 0 ? failure(...faults) : success(sheets);
}

interface Named {
  readonly stem: string;
  readonly about: string;
  readonly plate: Plate;
}

async function bothFormats({ stem, about, plate }: Named, colours: LayerColours | null): Promise<CutFile[]> {
  return [
    { path: `${stem}.svg`, about: `${about}; SVG in mm`, text: svgFile(plate, colours) },
    { path: `${stem}.dxf`, about: `${about}; DXF in mm`, text: await dxfFile(plate, colours) },
  ];
}

function namedParts(solution: Solution): Named[] {
  const { parts } = solution;
  const stems = fileStems(parts.map(({ name }) => name));
  const rows = cutList(parts, takesOf(solution), []);
  return parts.map((part, i) => ({
    stem: `parts/${stems[i]}`,
    about: `Part ${part.name} at its finished size, no kerf in it; ${rows[i] ? quantityText(rows[i]) : ''}`,
    plate: partPlate(part),
  }));
}

/** Closed outlines hold nothing in the sheet: whoever routs them has to know. */
function tabText({ shop, display }: Project): string {
  const { bit, tab } = shop.router;
  if (bit === null) return '';
  const size =
    tab === null ? '' : `, ${lengthWithUnit(tab.width, display)} wide and ${lengthWithUnit(tab.height, display)} high`;
  return `; no holding tabs are drawn: set them in the router’s program${size}`;
}

/** Sheets that are alike are one drawing, to cut so many times. */
function sheetPlates(sheets: readonly Sheet[], { parts, project }: Solution): Result<Named[]> {
  const groups = alikeSheets(sheets).map(({ sheet, numbers }) => ({ sheet, times: numbers.length }));
  const stems = fileStems(
    groups.map(({ sheet, times }) => `${sheetName(sheet)}${times > 1 ? ` cut ${times} times` : ''}`),
  );
  const named: Named[] = [];
  for (const [i, { sheet, times }] of groups.entries()) {
    const stock = project.stock.find(({ name }) => name === sheet.stock);
    const plate = sheetPlate(sheet, parts, stock ? cutterFor(stock, cutterOf(project)) : cutterOf(project));
    if (!plate.ok) return plate;
    const [name, cut] =
      times > 1 ? [`${plate.value.name}, cut × ${times}`, `cut × ${times}`] : [plate.value.name, 'cut once'];
    named.push({
      stem: `sheets/${stems[i]}`,
      about: `${sheet.offcut ? 'Offcut' : 'Sheet'} of ${sheet.stock}: ${cut} for both stands, the kerf taken into account, in the order of cutting${tabText(project)}`,
      plate: { ...plate.value, name },
    });
  }
  return success(named);
}
