import type { Box } from '$lib/drawing/box.ts';
import type { PaperSize } from './paper.ts';

/** Real mm for each paper mm: the reductions of ISO 5455 (from memory) that a desk or a stand asks for. */
export const printScales = [1, 2, 5, 10, 20, 50] as const;
export type PrintScale = (typeof printScales)[number];

/** Borders: 20 mm at the left, to file the sheet by, 10 mm elsewhere (ISO 5457, from memory). */
const FILING = 20;
const BORDER = 10;

/** What the border lines enclose. */
export const frameOf = ({ width, height }: PaperSize): Box => [FILING, BORDER, width - BORDER, height - BORDER];
