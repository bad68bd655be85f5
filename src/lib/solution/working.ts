import type { LengthUnit } from '$lib/project/units.ts';
import { aimFormulas } from '$lib/solution/working/aim.ts';
import type { Formula } from '$lib/solution/working/formula.ts';
import { formulaIn, quantityIn } from '$lib/solution/working/lengths.ts';
import { postureFormulas } from '$lib/solution/working/postures.ts';
import { screenFormulas } from '$lib/solution/working/screens.ts';
import { soundFormulas } from '$lib/solution/working/sound.ts';
import { standFormulas } from '$lib/solution/working/stand.ts';
import { standingFormulas } from '$lib/solution/working/standing.ts';
import { quantitiesIn, worth, type Quantity, type Subject } from '$lib/solution/working/term.ts';
import { triangleFormulas } from '$lib/solution/working/triangle.ts';

/** Every formula that a number of the results comes from. The page about the method is made from the same list. */
export const formulas: readonly Formula[] = [
  ...soundFormulas.filter(({ topic }) => topic === 'Air'),
  ...aimFormulas,
  ...postureFormulas,
  ...triangleFormulas,
  ...screenFormulas,
  ...soundFormulas.filter(({ topic }) => topic !== 'Air'),
  ...standFormulas,
  ...standingFormulas,
];

/** A formula with somebody's figures, in the unit that they see lengths in. */
export interface Working {
  readonly formula: Formula;
  /** Whether it is this formula that gave the number; else the number was given, or found otherwise: see `when`. */
  readonly holds: boolean;
  /** The numbers that go in, and what comes out: the plan's own number. */
  readonly figures: readonly { readonly quantity: Quantity; readonly value: number }[];
  readonly value: number;
  /** What the formula itself comes to with those figures: the same, but for rounding. */
  readonly comesTo: number;
}

export const formulaOf = (id: string): Formula | null => formulas.find((formula) => formula.id === id) ?? null;

/** How a number of the results was found; null for a number that no formula explains, or that is not known. */
export function workingOf(id: string, subject: Subject, unit: LengthUnit = 'mm'): Working | null {
  const written = formulaOf(id);
  if (!written || written.known?.(subject) === false) return null;
  const formula = formulaIn(written, unit);
  const letters = quantitiesIn(written.term).map((quantity) => quantityIn(quantity, unit));
  return {
    formula,
    holds: formula.holds?.(subject) ?? true,
    figures: letters.map((quantity) => ({ quantity, value: quantity.of(subject) })),
    value: formula.result.of(subject),
    comesTo: worth(formula.term, subject),
  };
}
