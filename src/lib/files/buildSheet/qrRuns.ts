import type { CodeBlock } from './block.ts';

/** Dark modules side by side: from which, in which row, how many. */
export interface Run {
  readonly x: number;
  readonly y: number;
  readonly length: number;
}

/** The side of a module, mm: six dots of a printer of 300 dpi, and wide enough for a telephone (common practice, no source). */
export const MODULE = 0.5;

/** The dark modules of a code as runs, row by row. */
export const qrRuns = ({ modules }: Pick<CodeBlock, 'modules'>): readonly Run[] =>
  modules.flatMap((row, y) => {
    const starts = row.flatMap((dark, x) => (dark && row[x - 1] !== true ? [x] : []));
    return starts.map((x) => {
      const end = row.findIndex((dark, at) => at > x && !dark);
      return { x, y, length: (end < 0 ? row.length : end) - x };
    });
  });
