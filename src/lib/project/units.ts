/** What lengths are shown and typed in. The file, the plan and the kernel know millimetres only. */
export type LengthUnit = 'mm' | 'in';

/** Exact since 1959: one inch is 25.4 mm. */
export const MM_PER_INCH = 25.4;

/** Digits kept of a number that was reckoned: far under any tape measure, and free of float dust. */
const DIGITS = 12;

/** The number without float dust: 0.3 for 0.1 + 0.2. */
export const undust = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : value);

/** A length in mm from one in the unit. Millimetres pass untouched. */
export const toMillimetres = (value: number, unit: LengthUnit): number =>
  unit === 'mm' ? value : undust(value * MM_PER_INCH);

/** A length in the unit from one in mm. Millimetres pass untouched. */
export const fromMillimetres = (value: number, unit: LengthUnit): number =>
  unit === 'mm' ? value : undust(value / MM_PER_INCH);

/** What fractions of an inch are counted in. */
export type Denominator = 8 | 16 | 32 | 64;

/** A way to show lengths: a unit alone means decimals. */
export type Lengths = LengthUnit | LengthDisplay;

/** The unit that lengths are shown in. */
export const unitOf = (lengths: Lengths): LengthUnit => (typeof lengths === 'string' ? lengths : lengths.length);

/** How lengths are shown: the project's `display`. With `fraction` null, inches are decimal. */
export interface LengthDisplay {
  readonly length: LengthUnit;
  readonly fraction: Denominator | null;
}

/** The same unit with decimals, where a fraction would not be exact enough. */
export const decimally = (lengths: Lengths): LengthDisplay => ({ length: unitOf(lengths), fraction: null });

/** How files and the command show lengths. */
export const MILLIMETRES: LengthDisplay = { length: 'mm', fraction: null };
