/** A number in a sentence: so many decimals at most, no trailing zeros, no negative zero. */
function trimmed(value: number, decimals: number): string {
  const rounded = Number(value.toFixed(decimals));
  return String(rounded === 0 ? 0 : rounded);
}

export const mmText = (value: number): string => `${trimmed(value, 1)} mm`;
export const degreesText = (value: number): string => `${trimmed(value, 1)}°`;
export const microsecondsText = (value: number): string => `${trimmed(value, 0)} µs`;
export const decibelText = (value: number): string => `${trimmed(value, 2)} dB`;
export const ratioText = (value: number): string => trimmed(value, 2);
