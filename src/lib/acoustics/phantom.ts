import { degrees, radians } from '$lib/geometry/angle.ts';

/**
 * The level difference, dB, that moves the phantom image of a pair by `shift` towards the louder side, by the tangent
 * law tan(shift)/tan(half) = (a − b)/(a + b); `half` is half the angle between the loudspeakers. Radians, shift under half.
 */
export function tangentLaw(shift: number, half: number): number {
  const [turn, whole] = [Math.tan(shift), Math.tan(half)];
  return 20 * Math.log10((whole + turn) / (whole - turn));
}

/** Listening tests with a pair at ±30°, read off graphs: level difference in dB, and the image's shift in degrees. Quoted. */
export const imageReadings = {
  Leakey: [
    [3.8, 7.5],
    [8, 15],
    [12.5, 22],
  ],
  'de Boer': [
    [4.5, 10],
    [11, 23],
  ],
} as const satisfies Record<string, readonly (readonly [number, number])[]>;

/**
 * The least level difference, dB, that shifts the image by a small angle (radians) for a pair at ±30°: the most cautious
 * of the readings, taken as proportional near the middle, and of the tangent law.
 */
export function levelForShift(shift: number): number {
  const readings = Object.values(imageReadings).flat();
  const byTest = readings.map(([level, angle]) => (level / angle) * degrees(shift));
  return Math.min(...byTest, tangentLaw(shift, radians(30)));
}
