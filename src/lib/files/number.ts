/** Numbers as files want them: decimal digits only, no exponent, no trailing zeros, no negative zero. */

/** From here on decimal digits alone no longer name a double exactly enough, and `toFixed` turns to exponents. */
const LARGEST = 1e15;

/**
 * The number with at most so many decimals, default 3: a micrometre for lengths in mm.
 *
 * @param what names the number in the error message.
 * @throws RangeError for a number that is not finite or has more than 15 digits before its point.
 */
export function fixed(value: number, what: string, decimals = 3): string {
  check(value, what);
  return trimmed(value.toFixed(decimals));
}

function check(value: number, what: string): void {
  if (!Number.isFinite(value) || Math.abs(value) >= LARGEST) {
    throw new RangeError(`${what}: expected a finite number of at most 15 digits, got ${value}`);
  }
}

function trimmed(digits: string): string {
  const short = digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
  return short === '-0' ? '0' : short;
}
