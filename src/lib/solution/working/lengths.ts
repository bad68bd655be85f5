import { MM_PER_INCH, type LengthUnit } from '$lib/project/units.ts';
import type { Formula } from './formula.ts';
import type { Quantity, Term, Unit } from './term.ts';

/** Units with a length in them: what they are called in inches, and the power of the length. */
const inInches: Partial<Record<Unit, { readonly unit: Unit; readonly power: number }>> = {
  mm: { unit: 'in', power: 1 },
  'mm³': { unit: 'in³', power: 3 },
  'mm/ms': { unit: 'in/ms', power: 1 },
};

/** A formula, written in millimetres, with its letters and its numbers in the unit that lengths are shown in. */
export const formulaIn = (formula: Formula, unit: LengthUnit): Formula =>
  unit === 'mm' ? formula : { ...formula, result: quantityInInches(formula.result), term: termInInches(formula.term) };

/** The named number in the unit that lengths are shown in. */
export const quantityIn = (quantity: Quantity, unit: LengthUnit): Quantity =>
  unit === 'mm' ? quantity : quantityInInches(quantity);

function quantityInInches(quantity: Quantity): Quantity {
  const inches = inInches[quantity.unit];
  if (!inches) return quantity;
  return { ...quantity, unit: inches.unit, of: (subject) => quantity.of(subject) / MM_PER_INCH ** inches.power };
}

function termInInches(of: Term): Term {
  switch (of.kind) {
    case 'quantity':
      return { kind: 'quantity', quantity: quantityInInches(of.quantity) };
    case 'number':
      return { kind: 'number', value: of.value / MM_PER_INCH ** (of.lengths ?? 0) };
    case 'call':
      return { ...of, args: of.args.map(termInInches) };
    case 'square':
    case 'root':
    case 'size':
      return { kind: of.kind, a: termInInches(of.a) };
    default:
      return { kind: of.kind, a: termInInches(of.a), b: termInInches(of.b) };
  }
}
