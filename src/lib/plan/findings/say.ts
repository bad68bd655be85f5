import { unitOf, type LengthDisplay } from '$lib/project/units.ts';

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
export const frequencyText = (value: number): string =>
  value < 1000 ? `${trimmed(value, 0)} Hz` : `${trimmed(value / 1000, 2)} kHz`;
export const millisecondsText = (value: number): string => `${trimmed(value, 2)} ms`;
/** A level that is heard: tenths of a decibel are more than enough. */
export const levelText = (value: number): string => `${trimmed(value, 1)} dB`;
export const newtonText = (value: number): string => `${trimmed(value, 1)} N`;
export const percentText = (value: number): string => `${trimmed(value, 1)} %`;
/** A length that the tape shows, in mm: a fraction of an inch to its last digit, so that it is the same fraction when read back. */
export const tapeText = (value: number, display: LengthDisplay): string =>
  unitOf(display) === 'mm' ? mmText(value) : `${trimmed(value, 6)} mm`;
