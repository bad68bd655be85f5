import { extentOf } from '$lib/geometry/extent.ts';
import { success, type Result } from '$lib/project/fault.ts';
import { cutOrder } from '$lib/workshop/cutOrder.ts';
import { cutPath, type CutPath } from '$lib/workshop/kerf.ts';
import { placed } from '$lib/workshop/nesting/placed.ts';
import type { Cutter } from '$lib/project/project.ts';
import { engravingOf } from '$lib/workshop/lettering/engraving.ts';
import { sheetName, type Part, type Sheet } from '$lib/workshop/part.ts';
import type { Plate } from './plate.ts';

/** One part alone at its finished size: no kerf in it. The plate is the part's bounding box, its name the part's. */
export function partPlate(part: Part): Plate {
  const extent = extentOf(part.outside);
  return {
    name: part.name,
    width: extent.right - extent.left,
    height: extent.top - extent.bottom,
    layers: { outside: [part.outside], inside: part.inside, engrave: engravingOf(part) },
  };
}

/**
 * One sheet as the beam is to run over it: outsides grown and holes shrunk by half the kerf, parts turned and placed,
 * contours in the order of cutting (see `cutOrder`).
 * The plate is the sheet, named by its stock and number; the sheet's own edge is not drawn, because it is not cut.
 * A hole too narrow for the beam is a fault that names its part.
 *
 * @throws Error when the sheet carries a part that is not among `parts`.
 */
export function sheetPlate(sheet: Sheet, parts: readonly Part[], cutter: Pick<Cutter, 'kerf'>): Result<Plate> {
  const cuts = new Map<string, CutPath>();
  for (const name of new Set(sheet.placements.map((placement) => placement.part))) {
    const cut = cutPath(named(name, parts, sheet), cutter.kerf);
    if (!cut.ok) return cut;
    cuts.set(name, cut.value);
  }
  const laid = sheet.placements.flatMap((placement) => {
    const cut = cuts.get(placement.part);
    return cut ? [placed(cut, placement)] : [];
  });
  const { outside, inside, engrave } = cutOrder(laid);
  return success({
    name: sheetName(sheet),
    width: sheet.width,
    height: sheet.height,
    layers: { outside, inside, engrave },
  });
}

function named(name: string, parts: readonly Part[], sheet: Sheet): Part {
  const part = parts.find((one) => one.name === name);
  if (!part) throw new Error(`sheet ${sheetName(sheet)}: no part is named "${name}"`);
  return part;
}
