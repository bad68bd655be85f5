import { degrees } from '$lib/geometry/angle.ts';
import { rootBetween } from '$lib/geometry/root.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Crossover, Layout, SideName, Speaker } from '$lib/project/project.ts';
import { isHighPass } from './alignment.ts';
import type { DesignPoint } from './designPoint.ts';
import { meetingOf } from './driversMeet.ts';
import { pathDifference } from './path.ts';
import { pistonLevel, pistonRadius, pistonSize } from './piston.ts';
import { radiatingOf } from './radiating.ts';

/** What it costs the driver that plays the treble: how far off its axis the head is, and what it loses there. */
export interface TreblePrice {
  readonly driver: string;
  /** Radians. */
  readonly offAxis: number;
  /** Level of its piston at `PRICE_FREQUENCY` re on its axis, dB. */
  readonly level: number;
  /** Whether the piston's diameter is an estimate. */
  readonly estimated: boolean;
}

/** A way to bring both drivers of a crossover to the head in step. */
export interface Remake<Value> {
  readonly value: Value;
  readonly price: TreblePrice;
}

export interface LineUp {
  /** As it is now. */
  readonly now: TreblePrice;
  /** The tilt that does it with the lift and the toe rule kept, radians; null when none from −60° to 60° does. */
  readonly tilt: Remake<number> | null;
  /** The aimed point that does it with the tilt rule kept: a fraction of the way from the lower driver to the upper; null when none does. */
  readonly aimedPoint: Remake<number> | null;
}

/**
 * A path difference left over under this counts as none, mm: a hundredth of a degree of phase at 20 kHz. More is left
 * where no pose lies between two that can be had.
 */
const IN_STEP = 1e-4;

/** A search for drivers in step ends here, mm: nearer than this the paths, of a metre or so, are rounding. */
const SETTLED = 1e-10;

/** Where the price is stated, Hz. */
export const PRICE_FREQUENCY = 10000;

/** The range that a project allows for a tilt, degrees. */
const TILTS = [-60, 60] as const;

/**
 * What would line the drivers of a crossover up at the head, as they are at the design point `point`. `pose` is how the loudspeaker stands now, `speed` the speed of sound, m/s.
 */
export function lineUp(
  { speaker, layout, side }: { readonly speaker: Speaker; readonly layout: Layout; readonly side: SideName },
  crossover: Crossover,
  point: DesignPoint,
  pose: Pick<Pose, 'drivers' | 'lift' | 'tilt'>,
  head: Vec3,
  speed: number,
): LineUp {
  const { lower, upper, design } = meetingOf(crossover, pose.drivers, point, speed);
  const treble = (isHighPass(crossover, upper.driver, lower.driver) ? upper : lower).driver;
  const price = ({ drivers }: Pick<Pose, 'drivers'>): TreblePrice => {
    const offAxis = drivers.find(({ driver }) => driver.name === treble.name)?.offAxis ?? 0;
    const size = pistonSize(pistonRadius(treble), PRICE_FREQUENCY, speed);
    const { estimated } = radiatingOf(treble);
    return { driver: treble.name, offAxis, level: pistonLevel(size, offAxis), estimated };
  };
  const stood = (changed: Layout): Pose | null => {
    const placed = placeSide(speaker, changed, side);
    return placed.ok ? placed.value : null;
  };
  const [low, high] = [pose.drivers.indexOf(lower), pose.drivers.indexOf(upper)];
  const apart = (changed: Layout): number => {
    const drivers = stood(changed)?.drivers;
    const [a, b] = [drivers?.[low], drivers?.[high]];
    if (!a || !b) return NaN;
    const left = pathDifference(a.acousticCentre, b.acousticCentre, head) - design;
    return Math.abs(left) < SETTLED ? 0 : left;
  };
  const solved = (make: (value: number) => Layout, bracket: readonly [number, number] | null) => {
    const value = bracket && rootBetween((at) => apart(make(at)), ...bracket);
    const there = value === null ? null : stood(make(value));
    if (value === null || there === null) return null;
    return Math.abs(apart(make(value))) < IN_STEP ? { value, price: price(there) } : null;
  };

  const tilted = (tilt: number): Layout => ({
    ...layout,
    aim: { ...layout.aim, tilt: { rule: 'as-set', degrees: tilt } },
    stand: { ...layout.stand, lift: pose.lift },
  });
  const through = (fraction: number): Layout => ({
    ...layout,
    aim: { ...layout.aim, through: { between: [lower.driver.name, upper.driver.name], fraction } },
  });
  const tilt = solved(
    tilted,
    bracketAbout((at) => apart(tilted(at)), degrees(pose.tilt)),
  );
  return {
    now: price(pose),
    tilt: tilt && { ...tilt, value: (tilt.value * Math.PI) / 180 },
    aimedPoint: solved(through, [0, 1]),
  };
}

/** The nearest change of sign about a tilt, by steps that double from 1°; null when there is none to the ends. */
function bracketAbout(f: (tilt: number) => number, from: number): readonly [number, number] | null {
  const here = f(from);
  for (let step = 1, [low, high] = [from, from]; low > TILTS[0] || high < TILTS[1]; step *= 2) {
    const [lower, higher] = [Math.max(TILTS[0], low - step), Math.min(TILTS[1], high + step)];
    if (f(lower) < 0 !== here < 0) return [lower, low];
    if (f(higher) < 0 !== here < 0) return [high, higher];
    [low, high] = [lower, higher];
  }
  return null;
}
