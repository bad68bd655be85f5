import fc from 'fast-check';

const STEPS = 2 ** 30;

/** Evenly spread numbers, ends included; fast-check's own doubles are mostly close to 0. */
export const numberFrom = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + ((max - min) * step) / STEPS);
