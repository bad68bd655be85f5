import { rootBetween } from '$lib/geometry/root.ts';
import type { Driver } from '$lib/project/project.ts';
import { jinc } from './bessel.ts';
import { radiatingOf } from './radiating.ts';

/** First null of the piston's directivity function, x = ka·sin θ (the first zero of J₁). */
const FIRST_NULL = 3.8317059702075125;

/** Levels are cut off here, dB: the null itself has none, and nothing so far down is heard beside anything else. */
const SILENT = -120;

/** Radius of the flat piston that stands for a driver, mm: half of what radiates, stated or estimated. */
export const pistonRadius = (driver: Driver): number => radiatingOf(driver).diameter / 2;

/** ka for a piston of a radius in mm at a frequency in Hz; `speed` is the speed of sound, m/s. */
export const pistonSize = (radius: number, frequency: number, speed: number): number =>
  (2 * Math.PI * frequency * radius) / (1000 * speed);

/**
 * Level of a circular flat piston in an infinite baffle off its axis, re on the axis, dB, 0 or less, −120 at the least:
 * 20·lg|2·J₁(x)/x| with x = ka·sin θ. `size` is ka, `offAxis` the angle from the axis in radians.
 *
 * A flat piston beams more than the dome or cone it stands for, so treat it as an upper bound of the loss. Behind the
 * baffle's plane (θ over 90°) this holds the value of the plane itself, x = ka; what the cabinet takes off there is
 * `shadowed`.
 */
export function pistonLevel(size: number, offAxis: number): number {
  const magnitude = Math.abs(jinc(size * forwardSine(offAxis)));
  return Math.max(20 * Math.log10(magnitude), SILENT);
}

/** sin θ in front of the baffle, 1 in its plane and behind it. */
export const forwardSine = (offAxis: number): number => (offAxis < Math.PI / 2 ? Math.sin(offAxis) : 1);

/**
 * How much of 2·J₂(x)/x joins 2·J₁(x)/x behind the baffle, a quarter turn from it, 0…1: none up to its plane, √(−cos θ)
 * behind. The two have no null in common and together are the smooth curve over the piston's lobes, so that a direction
 * behind the baffle, where no real cabinet has that piston's nulls, has none. A rule of thumb.
 */
export const filledBehind = (offAxis: number): number => (offAxis <= Math.PI / 2 ? 0 : Math.sqrt(-Math.cos(offAxis)));

/** The x = ka·sin θ at which the main lobe of a piston is down by `drop` dB (over 0): 1.6137 for 3 dB, 2.2118 for 6 dB. */
export function dropArgument(drop: number): number {
  const ratio = 10 ** (-drop / 20);
  const x = rootBetween((at) => jinc(at) - ratio, 0, FIRST_NULL);
  if (x === null) throw new RangeError(`expected a drop over 0 dB, got ${drop}`);
  return x;
}

/**
 * Angle from the axis, radians, at which a piston of size ka is first down by `drop` dB (over 0): half the width of the
 * beam. Null when it never is in front of the baffle.
 */
export function beamHalfAngle(size: number, drop: number): number | null {
  const sine = dropArgument(drop) / size;
  return sine <= 1 ? Math.asin(sine) : null;
}
