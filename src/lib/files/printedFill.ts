import type { Fill } from '$lib/drawing/primitive.ts';

/** Pale enough to write on, and to print on a printer without colours. Bodies without one hide nothing. */
const COLOURS: Partial<Record<Fill, string>> = {
  ink: '#000000',
  paper: '#ffffff',
  desk: '#faf8f2',
  surface: '#faf8f2',
  monitor: '#eef1f3',
  cabinet: '#f3f5f6',
  driver: '#e6eaec',
  stand: '#f6ecd8',
  head: '#ffffff',
};

/**
 * The colour that an area has in print, black on white; undefined for none.
 *
 * @param hatch what stands for hatching.
 */
export const printedFill = (fill: Fill | undefined, hatch: string): string | undefined =>
  fill === 'hatch' ? hatch : fill && COLOURS[fill];
