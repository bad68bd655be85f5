/** A length in a message: one decimal, with its unit. Messages round, the kernel does not. */
export const mm = (value: number): string => `${trim(value, 1)} mm`;

/** An angle in radians as a message says it: degrees with two decimals. */
export const deg = (angle: number): string => `${trim((angle * 180) / Math.PI, 2)}°`;

function trim(value: number, decimals: number): string {
  const rounded = Number(value.toFixed(decimals));
  return String(rounded === 0 ? 0 : rounded);
}
