import { fromMillimetres, MM_PER_INCH, type Denominator } from './units.ts';

/** A length in inches as a whole number and a fraction. */
export interface InchFraction {
  /** `18 3/4`, `3/4`, `18`, `0`, with a hyphen for a minus: as it is typed. The fraction is reduced. */
  readonly text: string;
  /** Whether nothing was rounded away. */
  readonly exact: boolean;
}

/** Less is the dust of floats, not a length: a thousandth of a micrometre. mm. */
const DUST = 1e-6;

/** The nearest fraction of the denominator to a length in mm. What rounds to nothing has no sign. */
export function inchFraction(mm: number, denominator: Denominator): InchFraction {
  const parts = Math.round(fromMillimetres(Math.abs(mm), 'in') * denominator);
  const exact = Math.abs((parts / denominator) * MM_PER_INCH - Math.abs(mm)) <= DUST;
  const whole = Math.floor(parts / denominator);
  const text = [whole > 0 || parts === 0 ? String(whole) : '', reduced(parts % denominator, denominator)]
    .filter((part) => part !== '')
    .join(' ');
  return { text: mm < 0 && parts > 0 ? `-${text}` : text, exact };
}

function reduced(over: number, under: number): string {
  if (over === 0) return '';
  return over % 2 === 0 ? reduced(over / 2, under / 2) : `${over}/${under}`;
}
