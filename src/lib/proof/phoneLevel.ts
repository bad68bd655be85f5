/** The slope of a surface by a level that was laid on it twice, the second time turned round. Degrees. */
export interface PhoneLevel {
  /** Of the way to which the level's front pointed at first: positive where that is high. */
  readonly slope: number;
  /** What the level shows on a level surface: turning it round takes that out. */
  readonly zero: number;
  /** Half of what holds 19 of 20. */
  readonly sure: number;
}

/**
 * What is left of a phone's error when its zero is taken out: its scale, and the feel of its case on the wood. Common practice,
 * no source. Degrees.
 */
const LEFT = 0.2;
const HALF_SPAN = 1.959964;

/** @param first What was shown, one way round, degrees. @param second The same after half a turn. Neither is empty. */
export function phoneLevel(first: readonly number[], second: readonly number[]): PhoneLevel {
  const [a, b] = [mean(first), mean(second)];
  const scatter = Math.hypot(ofMean(first, a), ofMean(second, b)) / 2;
  return { slope: (a - b) / 2, zero: (a + b) / 2, sure: Math.hypot(LEFT, HALF_SPAN * scatter) };
}

const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;

/** Standard deviation of the mean; 0 of a single one. */
const ofMean = (list: readonly number[], middle: number): number =>
  list.length < 2
    ? 0
    : Math.sqrt(list.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (list.length - 1) / list.length);
