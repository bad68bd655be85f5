import type { DesignPoint, Driver } from '$lib/project/project.ts';

/** What the maker's alignment does to one driver. */
export interface DriverAlignment {
  /** Path from its acoustic centre to the design point, mm: taken off its path, so that all arrive there together. 0 without a design point. */
  readonly advance: number;
  /** Ratio of pressures by which it is made louder, so that all are as loud there as the aimed one would be from the baffle. 1 without. */
  readonly strength: number;
}

/**
 * How a loudspeaker's drivers are lined up, in their order. The design point lies on one driver's own axis, so far from
 * the baffle; there all drivers arrive together and equally loud, apart from their directivity. Null: not known, and the
 * drivers count as they stand, acoustic depths included.
 */
export function alignmentsOf(drivers: readonly Driver[], point: DesignPoint | null): DriverAlignment[] {
  const aimed = point && drivers.find(({ name }) => name === point.driver);
  if (!point || !aimed) return drivers.map(() => ({ advance: 0, strength: 1 }));
  return drivers.map((driver) => {
    const advance = Math.hypot(
      aimed.offset - driver.offset,
      aimed.height - driver.height,
      point.distance + driver.acousticDepth,
    );
    return { advance, strength: advance / point.distance };
  });
}

/** Path of `lower` less that of `upper` at the design point, mm; 0 without one. */
export function designDifference(
  lower: Driver,
  upper: Driver,
  drivers: readonly Driver[],
  point: DesignPoint | null,
): number {
  const all = alignmentsOf(drivers, point);
  const advance = (driver: Driver): number => all[drivers.findIndex(({ name }) => name === driver.name)]?.advance ?? 0;
  return advance(lower) - advance(upper);
}
