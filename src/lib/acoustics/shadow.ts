/**
 * Bodies beside long and short waves: a wave much longer than a cabinet goes round it as if it were not there, a short
 * one does not. One rough shape serves for all three uses here: a first-order slope with its corner where the body is
 * c/(π·W) wide, the corner that builders use for the step of a baffle. Common practice, no source.
 */

/** Frequency from which a body `width` mm wide counts, Hz: c/(π·W). `speed` is the speed of sound, m/s. */
export const bodyCorner = (width: number, speed: number): number => (1000 * speed) / (Math.PI * width);

/**
 * What is left of a wave that has to go round a body, 0…1 as a ratio of pressures: 1/√(1 + (f/corner)²). Far below the
 * corner the body does not count, far above it the wave loses 6 dB an octave. No phase is added.
 */
export const shadow = (frequency: number, corner: number): number => 1 / Math.sqrt(1 + (frequency / corner) ** 2);

/**
 * The corner of what a baffle takes off a direction behind its plane, Hz: Infinity (nothing) up to 90°, coming down to
 * the body's own straight behind it, so that the level does not jump at the plane. `offAxis` is the angle from the axis,
 * radians.
 */
export const cornerBehind = (corner: number, offAxis: number): number =>
  offAxis <= Math.PI / 2 ? Infinity : corner / -Math.cos(offAxis);

/**
 * The step of a baffle, a ratio of pressures: 1 far above the corner, where the baffle sends all sound forwards, ½
 * (−6 dB) far below it, −3 dB at it: a first-order shelf. A hint only. Common practice, no source.
 */
export function baffleStep(frequency: number, corner: number): number {
  const square = (frequency / corner) ** 2;
  return Math.sqrt((0.5 + square) / (2 + square));
}
