import { degrees } from '$lib/geometry/angle.ts';
import type { Arrival } from '$lib/acoustics/arrivals.ts';
import { jinc } from '$lib/acoustics/bessel.ts';
import { forwardSine, pistonRadius, pistonSize } from '$lib/acoustics/piston.ts';
import { decibels } from '$lib/acoustics/response.ts';
import { bodyCorner, cornerBehind, shadow } from '$lib/acoustics/shadow.ts';
import type { RoomSurface } from '$lib/acoustics/surface.ts';
import type { Driver, Speaker } from '$lib/project/project.ts';
import type { ReflectionSound } from '$lib/plan/soundDocument.ts';

/** Where a reflection's level is stated, Hz: the octaves of the rule for early reflections. */
const LEVEL_FREQUENCIES = [1000, 2000, 4000, 8000] as const;

/** A driver's direct sound counts as at least this, a ratio of pressures: in a null of its beam there is none to compare with. */
const LEAST_DIRECT = 1e-6;

/** So many notches of a reflection are listed: c/2Δ and its next odd multiples. */
const ODD = [1, 3, 5] as const;

/** Every reflection of every driver, whether it lands or not. */
export const reflectionSound = (
  speaker: Speaker,
  arrivals: readonly Arrival[],
  surfaces: readonly RoomSurface[],
  speed: number,
): ReflectionSound[] =>
  arrivals.flatMap((arrival): ReflectionSound[] => {
    const driver = speaker.drivers[arrival.driver];
    const surface = arrival.surface === null ? undefined : surfaces[arrival.surface];
    const direct = arrivals.find(({ driver: index, surface: by }) => index === arrival.driver && by === null);
    if (!driver || !surface || !direct || !arrival.point) return [];
    const absorption = 20 * Math.log10(arrival.kept);
    const corner = bodyCorner(Math.min(speaker.width, speaker.height), speed);
    const ratio = (frequency: number): number =>
      (arrival.kept * direct.length * towards(driver, arrival, frequency, corner, speed)) /
      (arrival.length * Math.max(towards(driver, direct, frequency, corner, speed), LEAST_DIRECT));
    return [
      {
        surface: surface.name,
        monitor: surface.monitor,
        driver: driver.name,
        point: arrival.point,
        lands: arrival.lands,
        screenedBy: arrival.screen?.name ?? null,
        pathDifference: arrival.excess,
        delay: arrival.excess / speed,
        leaving: degrees(arrival.leaving),
        spreading: spreadingOf(arrival),
        absorption: Number.isFinite(absorption) ? absorption : null,
        levels: LEVEL_FREQUENCIES.map((frequency) => ({ frequency, level: decibels(ratio(frequency) ** 2) })),
        notches: notchesOf(arrival.excess, speed),
      },
    ];
  });

/** 20·lg(direct / reflected path), dB, 0 or less. */
export const spreadingOf = ({ length, excess }: Arrival): number => (20 / Math.LN10) * Math.log1p(-excess / length);

/** What directivity, the back of the baffle and bodies in the way leave of a driver's sound, as a ratio of pressures. */
function towards(
  driver: Driver,
  { leaving, screen }: Arrival,
  frequency: number,
  corner: number,
  speed: number,
): number {
  const size = pistonSize(pistonRadius(driver), frequency, speed);
  const behind = shadow(frequency, cornerBehind(corner, leaving));
  const past = screen ? shadow(frequency, bodyCorner(screen.width, speed)) : 1;
  return Math.abs(jinc(size * forwardSine(leaving))) * behind * past;
}

/** Those that a double can hold: paths equal but for their last digit have none. */
const notchesOf = (excess: number, speed: number): number[] =>
  ODD.map((odd) => (odd * 1000 * speed) / (2 * excess)).filter(Number.isFinite);
