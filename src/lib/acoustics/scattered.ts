import { angleBetween, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import { once } from '$lib/project/once.ts';
import { sentBack } from './arrivals.ts';
import type { Transfer } from './branches.ts';
import { detoursAt } from './descent.ts';
import { scatteringOf, type EdgeWave, type Scattering } from './diffraction.ts';
import { metBy, onOneSide } from './plate.ts';
import { countedOf, plateBetween, type RoomSurface } from './surface.ts';

/** One way from a driver by an edge or a corner of a surface to the head. */
export interface EdgeArrival {
  /** Acoustic centre to head by this way, mm. */
  readonly length: number;
  /** Angle at which it leaves the baffle, from the axis, radians. */
  readonly leaving: number;
  /** Of `alongDescent`. */
  readonly theta: Transfer;
}

/** What a surface that ends within the room makes of one driver's sound. */
export interface Scattered {
  /** Which of the room's surfaces, and which of the loudspeaker's drivers, from 0. */
  readonly surface: number;
  readonly driver: number;
  /** Whether its plane lies between driver and head. */
  readonly between: boolean;
  /** Worked out when it is first asked for. */
  readonly sent: () => Sent;
}

/** What comes by a surface: see `Scattering`. */
interface Sent extends Pick<Scattering, 'mirrors' | 'blocks'> {
  /** How much of it counts, 0…1. */
  readonly counted: number;
  readonly edges: readonly EdgeArrival[];
  /** The point of it on whose ways what stands near them counts for all of it. */
  readonly point: Vec3;
}

/**
 * What each plate among the surfaces makes of each driver's sound. An edge wave leaves the baffle as sound to its point of
 * the edge does; so it takes over from the mirror image without a jump. `speed` in m/s.
 */
export function scatteredBy(
  drivers: readonly PlacedDriver[],
  axis: Vec3,
  surfaces: readonly RoomSurface[],
  head: Vec3,
  speed: number,
): Scattered[] {
  const detours = detoursAt(speed);
  return drivers.flatMap(({ position, acousticCentre }, driver) =>
    surfaces.flatMap((surface, index): Scattered[] => {
      const plate = plateBetween(surface, acousticCentre, head);
      if (plate === null) return [];
      const sent = once((): Sent => {
        const { mirrors, blocks, edges } = scatteringOf(plate, acousticCentre, head, sentBack(surface), detours);
        const leaving = ({ point }: EdgeWave): number => angleBetween(axis, subtract(point, position));
        return {
          mirrors,
          blocks,
          counted: countedOf(surface, plate, acousticCentre, head),
          edges: edges.map((edge): EdgeArrival => ({ length: edge.length, leaving: leaving(edge), theta: edge.theta })),
          point: metBy(plate, position, head),
        };
      });
      return [{ surface: index, driver, between: !onOneSide(plate, acousticCentre, head), sent }];
    }),
  );
}
