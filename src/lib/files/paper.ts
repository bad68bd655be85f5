/** A sheet of paper held upright, mm. */
export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/** ISO 216 and ANSI sizes: Letter is 8.5 by 11 inches. */
export const papers = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<string, PaperSize>;

export type PaperName = keyof typeof papers;

/** What printers leave white round a page, with room to spare, mm: most reach to about 6 (common practice, no source). */
export const MARGIN = 10;
