import { angleBetween, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import { bounce } from './bounce.ts';
import { othersThan, screenBetween, widerOf, type Screen, type Way } from './screens.ts';
import type { RoomSurface } from './surface.ts';

/** One way from a driver to the head. */
export interface Arrival {
  /** Which of the room's surfaces it comes by, from 0; null for the direct sound. */
  readonly surface: number | null;
  /** Which of the loudspeaker's drivers, from 0. */
  readonly driver: number;
  /** Acoustic centre to head by this way, mm. */
  readonly length: number;
  /** Acoustic centre straight to head, mm. */
  readonly direct: number;
  /** Longer than the direct way by this, mm, 0 or more. */
  readonly excess: number;
  /** Where it meets the surface; null for the direct sound. */
  readonly point: Vec3 | null;
  /** Whether the surface is there at that point; true for the direct sound. */
  readonly lands: boolean;
  /** Angle at which it leaves the baffle, from the axis, radians. */
  readonly leaving: number;
  /** The widest body that stands in its way; looked for when it is asked for. */
  readonly screen: Screen | null;
  /** Share of the pressure that the surface sends back, √(1 − absorption); 1 for the direct sound. */
  readonly kept: number;
}

/**
 * All ways of one bounce at most from each driver to the head: for each driver the direct one, then one for each surface
 * that has the driver and the head on its sound side. Mirror images, so specular; ways that miss their surface are
 * listed with `lands: false`; what they carry nevertheless, where the surface ends within the room, is `scatteredBy`.
 *
 * A way is screened where it crosses a monitor's box or a cabinet. The loudspeaker's own cabinet does not screen what
 * leaves its baffle (directions behind the baffle have their own loss, `cornerBehind`), but does what comes back to it.
 */
export function arrivalsOf(
  drivers: readonly PlacedDriver[],
  axis: Vec3,
  surfaces: readonly RoomSurface[],
  way: Way,
  head: Vec3,
): Arrival[] {
  const others = othersThan(way);
  return drivers.flatMap(({ position, acousticCentre, distance }, driver) => {
    const direct: Arrival = {
      surface: null,
      driver,
      length: distance,
      direct: distance,
      excess: 0,
      point: null,
      lands: true,
      leaving: angleBetween(axis, subtract(head, position)),
      get screen() {
        return screenBetween(others, position, head);
      },
      kept: 1,
    };
    const bounced = surfaces.flatMap((by, surface): Arrival[] => {
      const path = bounce(by.plane, acousticCentre, head);
      if (!path) return [];
      const { point, excess } = path;
      return [
        {
          surface,
          driver,
          length: path.direct + excess,
          direct: path.direct,
          excess,
          point,
          lands: by.holds(point),
          leaving: angleBetween(axis, subtract(point, position)),
          get screen() {
            return widerOf(screenBetween(others, position, point), screenBetween(way.screens, point, head));
          },
          kept: sentBack(by),
        },
      ];
    });
    return [direct, ...bounced];
  });
}

/** Share of the pressure that a surface sends back, √(1 − absorption). */
export const sentBack = ({ absorption }: RoomSurface): number => Math.sqrt(1 - absorption);
