import { success, type Result } from '$lib/project/fault.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import type { PaperName } from './paper.ts';
import type { Plate } from './plate.ts';
import { pdfFile } from './pdf/pdf.ts';
import { templatePages } from './templatePages.ts';
import { tilingOf } from './tiling.ts';

/**
 * The plate as a PDF to print at full size and lay on the wood, over as many tiles as it takes. The same plate always gives
 * the same bytes. What it says of its own size is in the unit. Refused where it would take more than 100 pages.
 *
 * @throws RangeError naming the plate when a length is not finite.
 */
export function templatePdf(plate: Plate, paper: PaperName, unit: LengthUnit): Result<Uint8Array> {
  const tiling = tilingOf(plate.name, plate, paper);
  return tiling.ok ? success(pdfFile(plate.name, templatePages(plate, tiling.value, unit))) : tiling;
}
