import type { Box } from '$lib/drawing/box.ts';

/** Sheets that office printers take, upright, mm. A4 and A3 are ISO 216; Letter is 8½ × 11 in. */
export const printSheets = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<string, SheetSize>;

export type SheetName = keyof typeof printSheets;

export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

/** Real mm for each paper mm: the reductions of ISO 5455 (from memory) that a desk or a stand asks for. */
export const printScales = [1, 2, 5, 10, 20, 50] as const;
export type PrintScale = (typeof printScales)[number];

/** Borders: 20 mm at the left, to file the sheet by, 10 mm elsewhere (ISO 5457, from memory). */
const FILING = 20;
const BORDER = 10;

/** What the border lines enclose. */
export const frameOf = ({ width, height }: SheetSize): Box => [FILING, BORDER, width - BORDER, height - BORDER];

/** A sheet upright and on its side. */
export const bothWays = ({ width, height }: SheetSize): readonly [SheetSize, SheetSize] => [
  { width, height },
  { width: height, height: width },
];
