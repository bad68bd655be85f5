import type { Vec3 } from '$lib/geometry/point.ts';
import type { Arrival } from './arrivals.ts';
import type { Band } from './bands.ts';
import type { Screen } from './screens.ts';
import type { RoomSurface, SurfaceName } from './surface.ts';

/** One driver's sound by way of one surface, beside its direct sound. */
export interface Reflection {
  readonly surface: SurfaceName;
  /** Which of the screens, from 0; null for any other surface. */
  readonly monitor: number | null;
  /** Which of the loudspeaker's drivers, from 0. */
  readonly driver: number;
  /** Where it meets the surface's plane, desk frame, mm. */
  readonly point: Vec3;
  /** Whether the surface is there at the point. */
  readonly lands: boolean;
  /** What stands in its way. */
  readonly screenedBy: Screen['name'] | null;
  /** Reflected path less direct path, mm, 0 or more. */
  readonly pathDifference: number;
  /** Behind the direct sound, ms. */
  readonly delay: number;
  /** dB re the direct sound, 0 or less: by spreading alone, no loss in the surface, no directivity. */
  readonly relativeLevel: number;
  /** The lowest frequencies in the driver's band that arrive half a wave late, Hz; none where it plays none of them. */
  readonly notches: readonly number[];
}

/** So many notches are listed. */
const NOTCHES = 3;

/**
 * The reflections among the ways of a loudspeaker's sound, in their order, those that miss their surface too. A driver's
 * notches lie at odd multiples of c/(2Δ); what it does not play it cannot cancel, so only those in its band count.
 * `bands` are the drivers' ones, `speed` is the speed of sound, m/s.
 */
export const reflectionsOf = (
  arrivals: readonly Arrival[],
  surfaces: readonly RoomSurface[],
  bands: readonly Band[],
  speed: number,
): Reflection[] =>
  arrivals.flatMap((arrival): Reflection[] => {
    const { driver, point, lands, screen, excess } = arrival;
    const surface = arrival.surface === null ? undefined : surfaces[arrival.surface];
    const band = bands[driver];
    if (!surface || !point || !band) return [];
    return [
      {
        surface: surface.name,
        monitor: surface.monitor,
        driver,
        point,
        lands,
        screenedBy: screen?.name ?? null,
        pathDifference: excess,
        // A millimetre at one metre a second takes a millisecond.
        delay: excess / speed,
        relativeLevel: spreadingOf(arrival),
        notches: notchesIn(band, (1000 * speed) / (2 * excess)),
      },
    ];
  });

/** 20·lg(direct / reflected path), dB, 0 or less; with `log1p` so that a small excess keeps its digits. */
export const spreadingOf = ({ direct, excess }: Arrival): number => (-20 / Math.LN10) * Math.log1p(excess / direct);

/** The lowest odd multiples of a frequency within a band. */
function notchesIn({ low, high }: Band, first: number): number[] {
  // Paths equal but for their last digit have none.
  if (!Number.isFinite(first) || first > high) return [];
  const least = 2 * Math.max(0, Math.ceil((low / first - 1) / 2)) + 1;
  return Array.from({ length: NOTCHES }, (_, i) => (least + 2 * i) * first).filter((one) => one >= low && one <= high);
}
