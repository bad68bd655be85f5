import { rootBetween } from '$lib/geometry/root.ts';

/** Past this many deviations a double cannot tell the share from 0 or 1. */
const END = 9;
/** Terms of the series: enough at `END`, where they first grow; smaller arguments stop sooner. */
const TERMS = 200;

/**
 * Share of a normal distribution below `z` deviations over its middle, 0…1: ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …), a series
 * whose terms all have one sign.
 */
export function shareBelow(z: number): number {
  if (Math.abs(z) > END) return z < 0 ? 0 : 1;
  let term = z;
  let sum = z;
  for (let i = 1; i < TERMS && Math.abs(term) > Number.EPSILON * Math.abs(sum); i++) {
    term *= (z * z) / (2 * i + 1);
    sum += term;
  }
  return 0.5 + sum * density(z);
}

/** Height of the standard normal curve at `z`. */
export const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** How many deviations over the middle a share (0…1, ends excluded) lies below: −1.6449 for 0.05, 0 for 0.5. */
export function deviationsAt(share: number): number {
  const z = rootBetween((at) => shareBelow(at) - share, -END, END);
  if (z === null) throw new RangeError(`expected a share between 0 and 1, got ${share}`);
  return z;
}

/** Deviations from the middle to the 95th percentile. */
export const TO_P95 = deviationsAt(0.95);
