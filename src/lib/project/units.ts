/** What lengths are shown and typed in. The file, the plan and the kernel know millimetres only. */
export type LengthUnit = 'mm' | 'in';

/** Exact since 1959: one inch is 25.4 mm. */
export const MM_PER_INCH = 25.4;

/** Digits kept when a typed length is turned into mm: far under any tape measure, and free of float dust. */
const DIGITS = 12;

const undust = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : value);

/** A length in mm from one in the unit. Millimetres pass untouched. */
export const toMillimetres = (value: number, unit: LengthUnit): number =>
  unit === 'mm' ? value : undust(value * MM_PER_INCH);

/** A length in the unit from one in mm. Millimetres pass untouched. */
export const fromMillimetres = (value: number, unit: LengthUnit): number =>
  unit === 'mm' ? value : undust(value / MM_PER_INCH);
