import { degrees } from '$lib/geometry/angle.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { jincNear } from '$lib/acoustics/jincTable.ts';
import { beamHalfAngle, forwardSine, pistonRadius, pistonSize } from '$lib/acoustics/piston.ts';
import { decibels } from '$lib/acoustics/response.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import { radiatingPlan } from '$lib/solution/sides.ts';
import type { DriverSound } from '$lib/solution/soundDocument.ts';

/** Where the width of a beam is stated, Hz: the octaves in which drivers of a desk loudspeaker beam. */
const BEAM_FREQUENCIES = [1000, 2000, 4000, 8000, 16000] as const;

/** One driver's directivity, towards the head and at some frequencies. */
export function driverSound({ driver, offAxis }: PlacedDriver, speed: number): DriverSound {
  const radius = pistonRadius(driver);
  const perHertz = pistonSize(radius, 1, speed) * forwardSine(offAxis);
  const half = (frequency: number, drop: number): number | null => {
    const angle = beamHalfAngle(pistonSize(radius, frequency, speed), drop);
    return angle === null ? null : degrees(angle);
  };
  return {
    name: driver.name,
    offAxis: degrees(offAxis),
    ...radiatingPlan(driver),
    levels: Float64Array.from(frequencies, (f) => decibels(jincNear(perHertz * f) ** 2)),
    beams: BEAM_FREQUENCIES.map((frequency) => ({
      frequency,
      threeDown: half(frequency, 3),
      sixDown: half(frequency, 6),
    })),
  };
}
