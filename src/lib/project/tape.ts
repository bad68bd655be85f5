import { MM_PER_INCH, type LengthDisplay } from './units.ts';

/** Decimal inches are laid out to a twentieth. */
const DECIMAL_INCH = 20;

/** The finest length that somebody lays out with a tape in the unit that the project shows, mm: a millimetre, or its fraction of an inch. */
export const tapeStep = ({ length, fraction }: LengthDisplay): number =>
  length === 'mm' ? 1 : MM_PER_INCH / (fraction ?? DECIMAL_INCH);

/** Half-way rounds away from the middle, on both sides of it alike. */
const nearest = (steps: number): number => Math.sign(steps) * Math.round(Math.abs(steps));

const ROUNDING = { up: Math.ceil, down: Math.floor, nearest } as const;

/** A length, mm, brought to what the tape shows; one that it shows already, but for float dust, stays. */
export function toTape(mm: number, display: LengthDisplay, way: keyof typeof ROUNDING = 'nearest'): number {
  const step = tapeStep(display);
  const steps = mm / step;
  const whole = Math.abs(steps - Math.round(steps)) < 1e-6 ? Math.round(steps) : ROUNDING[way](steps);
  return Number((whole * step).toPrecision(12));
}
