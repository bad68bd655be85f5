import type { Placement, Sheet } from '$lib/workshop/part.ts';

/** Sheets of one stock and size that carry the same parts in the same places: cut from one drawing. */
export interface AlikeSheets {
  /** The first of them, which stands for all. */
  readonly sheet: Sheet;
  /** Of all of them, in their order. */
  readonly numbers: readonly number[];
}

/** The sheets in groups that are cut from one drawing, in the order of their first ones. */
export function alikeSheets(sheets: readonly Sheet[]): readonly AlikeSheets[] {
  const groups = new Map<string, { sheet: Sheet; numbers: number[] }>();
  for (const sheet of sheets) {
    const key = keyOf(sheet);
    const group = groups.get(key);
    if (group) group.numbers.push(sheet.number);
    else groups.set(key, { sheet, numbers: [sheet.number] });
  }
  return [...groups.values()];
}

/** Places to a thousandth of a millimetre, as files keep them; turns to a thousandth of a degree. */
const keyOf = ({ stock, offcut = false, width, height, placements }: Sheet): string =>
  JSON.stringify([stock, offcut, width, height, placements.map(placeOf).sort()]);

const placeOf = ({ part, x, y, turn }: Placement): string =>
  JSON.stringify([part, x.toFixed(3), y.toFixed(3), turn.toFixed(5)]);
