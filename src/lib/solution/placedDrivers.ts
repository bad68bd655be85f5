import { radians } from '$lib/geometry/angle.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Speaker } from '$lib/project/project.ts';
import type { SidePlan } from './document.ts';

/** The drivers of one side as the acoustics take them: the plan's, with their angles back in radians. */
export function placedDrivers(speaker: Speaker, { drivers }: Pick<SidePlan, 'drivers'>): PlacedDriver[] {
  return speaker.drivers.flatMap((driver) => {
    const placed = drivers.find(({ name }) => name === driver.name);
    return placed ? [{ ...placed, driver, offAxis: radians(placed.offAxis) }] : [];
  });
}
