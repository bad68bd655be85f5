import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Speaker } from '$lib/project/project.ts';
import type { Arrival } from './arrivals.ts';
import { branches, type Transfer } from './branches.ts';
import type { Delayed } from './cells.ts';
import { alongDescent } from './descent.ts';
import { EVERYWHERE, type Places } from './grid.ts';
import { alignmentsOf, designPointOf, type DriverAlignment } from './designPoint.ts';
import { filledBehind, forwardSine, pistonRadius } from './piston.ts';
import type { Scattered } from './scattered.ts';
import { othersThan, type Screen, type Way } from './screens.ts';
import { shade, shadesOn, type Shade } from './shading.ts';
import type { RoomSurface } from './surface.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { bodyCorner, cornerBehind } from './shadow.ts';
import { addWave, silence, together, type Wave } from './wave.ts';
import { once } from '$lib/project/once.ts';

/** A loudspeaker made ready for sums over frequency: the same for both sides. */
export interface Source {
  readonly branches: readonly Transfer[];
  /** Null where nobody said how the drivers were lined up: they then count as arriving in step at the head. */
  readonly alignments: readonly DriverAlignment[] | null;
  /** Hz: from where the cabinet takes something off behind its baffle. */
  readonly corner: number;
}

/** What reaches the head of one driver by one way, as complex pressure over the frequencies of the grid. */
export interface Part extends Delayed {
  /** Which of the room's surfaces, from 0; null for the direct sound. */
  readonly surface: number | null;
  /** Which of the loudspeaker's drivers, from 0. */
  readonly driver: number;
  /** Whether it is all of the direct sound or, of a surface between driver and head, what becomes of that. */
  readonly straight: boolean;
}

/** What reaches the head from one loudspeaker, as complex pressure over the frequencies of the grid; each sum when it is first read. */
export interface Field {
  readonly parts: readonly Part[];
  /** With what a screen in its way makes of it. */
  readonly direct: Transfer;
  /** By surface, in the room's order; null where nothing comes by that way. */
  readonly bySurface: readonly (Sum | null)[];
  /** Direct and reflected together. */
  readonly total: Transfer;
  /** The direct waves of the drivers, one each. */
  readonly directWaves: readonly Wave[];
}

interface Sum {
  readonly sum: Transfer;
}

function alignmentsFor(speaker: Speaker): DriverAlignment[] | null {
  const point = designPointOf(speaker);
  return point && alignmentsOf(speaker.drivers, point);
}

export const sourceOf = (speaker: Speaker, speed: number): Source => ({
  branches: branches(speaker.drivers, speaker.crossovers),
  alignments: alignmentsFor(speaker),
  corner: bodyCorner(Math.min(speaker.width, speaker.height), speed),
});

/**
 * The complex sum of all ways that carry sound: the direct one, the mirror images, and of a surface that ends within the
 * room what its edges send. Drivers of unknown alignment count as arriving together, as if from `aimed` mm away, so that
 * no loss is made up at their crossover. `speed` is the speed of sound, m/s. Sums are told at `places` of the grid and are
 * 0 elsewhere; what they are at one place hangs on no other.
 */
export function fieldOf(
  source: Source,
  drivers: readonly PlacedDriver[],
  arrivals: readonly Arrival[],
  scattered: readonly Scattered[],
  surfaces: readonly RoomSurface[],
  way: Way,
  head: Vec3,
  aimed: number,
  speed: number,
  places = EVERYWHERE,
): Field {
  const directWaves: Wave[] = [];
  const parts: Part[] = [];
  const others = othersThan(way);
  const solid = way.screens.filter(({ name }) => name !== 'monitor' && name !== 'surface');
  /** A screen is a plate of its own, and so is a shelf: beside the direct sound, and on the ways by its own face, its body is not one more. */
  const shadesBy = ({ position }: PlacedDriver, surface: number | null, point: Vec3 | null): Shade[] => {
    if (surface === null || point === null)
      return shadesOn(position, head, othersThan({ ...way, screens: solid }), speed);
    const { monitor = null, face } = surfaces[surface] ?? {};
    const beside = (one: Screen): boolean =>
      (monitor === null || one.monitor !== monitor) && (face === undefined || one.surface !== face.surface);
    return [
      ...shadesOn(position, point, others.filter(beside), speed),
      ...shadesOn(point, head, way.screens.filter(beside), speed),
    ];
  };
  drivers.forEach((placed, driver) => {
    const branch = source.branches[driver];
    if (!branch) return;
    const alignment = source.alignments?.[driver] ?? { advance: placed.distance - aimed, strength: 1 };
    const waveOf = (way: Departure, share: number): Wave => ({
      gain: alignment.strength * share,
      turn: perHertz(speed) * (way.length - alignment.advance),
      argument: perHertz(speed) * pistonRadius(placed.driver) * forwardSine(way.leaving),
      filled: filledBehind(way.leaving),
      behind: inverseSquare(cornerBehind(source.corner, way.leaving)),
      branch,
      bent: null,
    });
    const own = arrivals.filter((arrival) => arrival.driver === driver);
    for (const arrival of own) {
      const { surface } = arrival;
      const wave = waveOf(arrival, arrival.kept / arrival.length);
      if (surface === null) directWaves.push(wave);
      else if (!arrival.lands || scattered.some((one) => one.driver === driver && one.surface === surface)) continue;
      parts.push(
        partOf(surface, driver, surface === null, wave.turn, () =>
          sumOf(wave, shadesBy(placed, surface, arrival.point), places),
        ),
      );
    }
    const direct = own.find(({ surface }) => surface === null);
    for (const { surface, between, sent } of scattered.filter((one) => one.driver === driver)) {
      const mirrored = own.find((arrival) => arrival.surface === surface);
      const arriving = (): Transfer => {
        const { counted, mirrors, blocks, edges, point } = sent();
        const sum = silence();
        for (const edge of edges) {
          addWave(sum, { ...waveOf(edge, counted), bent: alongDescent(edge.theta, bent, places) }, places);
        }
        if (mirrors && mirrored) addWave(sum, waveOf(mirrored, (counted * mirrored.kept) / mirrored.length), places);
        if (blocks && direct) addWave(sum, waveOf(direct, -counted / direct.length), places);
        shade(sum, shadesBy(placed, surface, point), places);
        return sum;
      };
      const delay = mirrored ?? direct;
      // Edges are heard about when the mirror image is; what differs is small where it matters.
      parts.push(partOf(surface, driver, between, delay ? waveOf(delay, 1).turn : 0, arriving));
    }
  });
  const ofSurface = (surface: number | null): Part[] => parts.filter((part) => part.surface === surface);
  const direct = sumOnce(() => together(parts.filter(({ straight }) => straight)));
  const total = sumOnce(() => together(parts));
  return {
    parts,
    get direct() {
      return direct.sum;
    },
    bySurface: Array.from({ length: surfaces.length }, (_, surface) => {
      const own = ofSurface(surface);
      return own.length === 0 ? null : sumOnce(() => together(own));
    }),
    get total() {
      return total.sum;
    },
    directWaves,
  };
}

function partOf(surface: number | null, driver: number, straight: boolean, turn: number, work: () => Transfer): Part {
  const known = once(work);
  return {
    surface,
    driver,
    straight,
    turn,
    get sum() {
      return known();
    },
  };
}

function sumOnce(work: () => Transfer): Sum {
  const known = once(work);
  return {
    get sum() {
      return known();
    },
  };
}

/** What a wave needs to know of its way. */
type Departure = Pick<Arrival, 'length' | 'leaving'>;

/** Written over by each edge. */
const bent = silence();

/** Radians of phase or of ka for each Hz and mm. */
const perHertz = (speed: number): number => (2 * Math.PI) / (1000 * speed);

const inverseSquare = (corner: number): number => 1 / (corner * corner);

function sumOf(wave: Wave, shades: readonly Shade[], places: Places): Transfer {
  const sum = silence();
  addWave(sum, wave, places);
  shade(sum, shades, places);
  return sum;
}
