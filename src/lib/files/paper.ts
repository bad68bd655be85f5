/** A sheet of paper, mm. */
export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/** Sheets that office printers take, upright, mm. A4 and A3 are ISO 216; Letter is 8½ × 11 in. */
export const papers = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<string, PaperSize>;

export type PaperName = keyof typeof papers;

/** A sheet upright and on its side. */
export const bothWays = ({ width, height }: PaperSize): readonly [PaperSize, PaperSize] => [
  { width, height },
  { width: height, height: width },
];

/** What printers leave white round a page, with room to spare, mm: most reach to about 6 (common practice, no source). */
export const MARGIN = 10;
