import type { FigureName } from '$lib/solution/working/formula.ts';
import type { Figure } from '$lib/views/figure/figure.ts';
import { driver, miss, side, toe, triangle } from './aimFigures.ts';
import { crossover, piston, reflection } from './soundFigures.ts';
import { profile, rod, slide, stack, tip } from './standFigures.ts';

/** The picture of each definition; its letters are those of the formulas. */
export const figures: Readonly<Record<FigureName, Figure>> = {
  toe,
  side,
  miss,
  triangle,
  driver,
  crossover,
  reflection,
  stack,
  profile,
  rod,
  tip,
  slide,
  piston,
};
