import { radians } from '$lib/geometry/angle.ts';

/** General tolerances of ISO 2768-1:1989, from fine to very coarse. */
export const toleranceClasses = ['f', 'm', 'c', 'v'] as const;
export type ToleranceClass = (typeof toleranceClasses)[number];

/** Its names of them. */
export const classNames: Readonly<Record<ToleranceClass, string>> = {
  f: 'fine',
  m: 'medium',
  c: 'coarse',
  v: 'very coarse',
};

/** Each row: sizes up to so many mm, and ± mm in the classes f, m, c, v. ISO 2768-1, table 1; where a class ends before, its last value. */
const LINEAR: readonly (readonly [upTo: number, f: number, m: number, c: number, v: number])[] = [
  [3, 0.05, 0.1, 0.2, 0.5],
  [6, 0.05, 0.1, 0.3, 0.5],
  [30, 0.1, 0.2, 0.5, 1],
  [120, 0.15, 0.3, 0.8, 1.5],
  [400, 0.2, 0.5, 1.2, 2.5],
  [1000, 0.3, 0.8, 2, 4],
  [2000, 0.5, 1.2, 3, 6],
  [Infinity, 0.5, 2, 4, 8],
];

/** Each row: shorter legs up to so many mm, and ± minutes of arc. ISO 2768-1, table 3. */
const ANGULAR: readonly (readonly [upTo: number, f: number, m: number, c: number, v: number])[] = [
  [10, 60, 60, 90, 180],
  [50, 30, 30, 60, 120],
  [120, 20, 20, 30, 60],
  [400, 10, 10, 15, 30],
  [Infinity, 5, 5, 10, 20],
];

const COLUMN: Readonly<Record<ToleranceClass, 1 | 2 | 3 | 4>> = { f: 1, m: 2, c: 3, v: 4 };

const at = (table: typeof LINEAR, size: number, of: ToleranceClass): number =>
  table.find(([upTo]) => size <= upTo)?.[COLUMN[of]] ?? NaN;

/** By how much a length may be off, ± mm. `size`: mm, 0 or more. */
export const lengthTolerance = (size: number, of: ToleranceClass): number => at(LINEAR, size, of);

/** By how much an angle may be off, ± radians. `leg`: the shorter of its two, mm. */
export const angleTolerance = (leg: number, of: ToleranceClass): number => radians(at(ANGULAR, leg, of) / 60);
