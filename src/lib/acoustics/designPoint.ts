import type { Driver, Speaker } from '$lib/project/project.ts';
import { trebleDriver } from './trebleDriver.ts';

/** Where a loudspeaker's drivers are lined up: on the axis of `driver`, `distance` mm from the baffle. */
export interface DesignPoint {
  readonly driver: string;
  readonly distance: number;
}

/** How far from the baffle most makers measure, mm. Common practice, no source. */
const MAKERS_DISTANCE = 1000;

/** Where a maker most likely lined the drivers up: on the axis of the first tweeter, else of what plays the treble, at 1 m. */
export const makersPoint = (drivers: readonly Driver[]): DesignPoint => ({
  driver: (drivers.find(({ role }) => role === 'tweeter') ?? trebleDriver(drivers)).name,
  distance: MAKERS_DISTANCE,
});

/** Where the drivers count as lined up; null where that is not known, and nothing may be built on it. */
export function designPointOf({ designPoint, drivers }: Pick<Speaker, 'designPoint' | 'drivers'>): DesignPoint | null {
  switch (designPoint.rule) {
    case 'maker':
      return makersPoint(drivers);
    case 'measured':
      return designPoint;
    case 'none':
      return null;
  }
}

/** What the maker's alignment does to one driver. */
export interface DriverAlignment {
  /** Path from its acoustic centre to the design point, mm: taken off its path, so that all arrive there together. */
  readonly advance: number;
  /** Ratio of pressures by which it is made louder, so that all are as loud there as the aimed one would be from the baffle. */
  readonly strength: number;
}

/**
 * How a loudspeaker's drivers are lined up, in their order. The design point lies on one driver's own axis, so far from
 * the baffle; there all drivers arrive together and equally loud, apart from their directivity. Throws when the point
 * names none of the drivers, which no parsed project does.
 */
export function alignmentsOf(drivers: readonly Driver[], point: DesignPoint): DriverAlignment[] {
  const aimed = drivers.find(({ name }) => name === point.driver);
  if (!aimed) throw new Error(`the design point names "${point.driver}", which is none of the drivers`);
  return drivers.map((driver) => {
    const advance = Math.hypot(
      aimed.offset - driver.offset,
      aimed.height - driver.height,
      point.distance + driver.acousticDepth,
    );
    return { advance, strength: advance / point.distance };
  });
}

/** Path of `lower` less that of `upper` at the design point, mm. */
export function designDifference(lower: Driver, upper: Driver, drivers: readonly Driver[], point: DesignPoint): number {
  const all = alignmentsOf(drivers, point);
  const advance = (driver: Driver): number => all[drivers.findIndex(({ name }) => name === driver.name)]?.advance ?? 0;
  return advance(lower) - advance(upper);
}
