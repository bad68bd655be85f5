import { pdfFile } from './pdf/pdf.ts';
import type { ViewSheet } from './viewSheet.ts';

/** The sheet as a PDF of one page: the same lines, tints, hatching and text as its SVG. */
export const sheetPdf = ({ width, height, title, groups }: ViewSheet): Uint8Array =>
  pdfFile(title, [{ width, height, primitives: groups.flatMap(({ primitives }) => primitives), within: null }]);
