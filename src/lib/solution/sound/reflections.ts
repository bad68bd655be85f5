import { degrees } from '$lib/geometry/angle.ts';
import type { Arrival } from '$lib/acoustics/arrivals.ts';
import { jinc } from '$lib/acoustics/bessel.ts';
import { forwardSine, pistonRadius, pistonSize } from '$lib/acoustics/piston.ts';
import { decibels } from '$lib/acoustics/response.ts';
import { bodyCorner, cornerBehind, shadow } from '$lib/acoustics/shadow.ts';
import type { Driver, Speaker } from '$lib/project/project.ts';
import type { ReflectionPlan } from '$lib/solution/document.ts';
import type { ReflectionSound } from '$lib/solution/soundDocument.ts';

/** Where a reflection's level is stated, Hz: the octaves of the rule for early reflections. */
const LEVEL_FREQUENCIES = [1000, 2000, 4000, 8000] as const;

/** A driver's direct sound counts as at least this, a ratio of pressures: in a null of its beam there is none to compare with. */
const LEAST_DIRECT = 1e-6;

/** The plan's reflections, which come from the same ways in the same order, with their levels. */
export function reflectionSound(
  speaker: Speaker,
  arrivals: readonly Arrival[],
  planned: readonly ReflectionPlan[],
  speed: number,
): ReflectionSound[] {
  const bounced = arrivals.filter(({ surface }) => surface !== null);
  return planned.flatMap((reflection, index): ReflectionSound[] => {
    const arrival = bounced[index];
    const driver = arrival && speaker.drivers[arrival.driver];
    const direct = arrivals.find(({ driver: of, surface }) => of === arrival?.driver && surface === null);
    if (!arrival || !driver || !direct) return [];
    const absorption = 20 * Math.log10(arrival.kept);
    const corner = bodyCorner(Math.min(speaker.width, speaker.height), speed);
    const ratio = (frequency: number): number =>
      (arrival.kept * direct.length * towards(driver, arrival, frequency, corner, speed)) /
      (arrival.length * Math.max(towards(driver, direct, frequency, corner, speed), LEAST_DIRECT));
    return [
      {
        ...reflection,
        leaving: degrees(arrival.leaving),
        absorption: Number.isFinite(absorption) ? absorption : null,
        levels: LEVEL_FREQUENCIES.map((frequency) => ({ frequency, level: decibels(ratio(frequency) ** 2) })),
      },
    ];
  });
}

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
