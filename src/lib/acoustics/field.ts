import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Speaker } from '$lib/project/project.ts';
import type { Arrival } from './arrivals.ts';
import { branches, type Transfer } from './branches.ts';
import { alignmentsOf, type DriverAlignment } from './designPoint.ts';
import { forwardSine, pistonRadius } from './piston.ts';
import { bodyCorner, cornerBehind } from './shadow.ts';
import { addTransfer, addWave, silence, type Wave } from './wave.ts';

/** A loudspeaker made ready for sums over frequency: the same for both sides. */
export interface Source {
  readonly branches: readonly Transfer[];
  /** Null where nobody said how the drivers were lined up: they then count as arriving in step at the head. */
  readonly alignments: readonly DriverAlignment[] | null;
  /** Hz: from where the cabinet takes something off behind its baffle. */
  readonly corner: number;
}

/** What reaches the head from one loudspeaker, as complex pressure over the frequencies of the grid. */
export interface Field {
  readonly direct: Transfer;
  /** By surface, in the room's order; null where nothing comes by that way. */
  readonly bySurface: readonly (Transfer | null)[];
  /** Direct and reflected together. */
  readonly total: Transfer;
  /** The direct waves of the drivers, one each. */
  readonly directWaves: readonly Wave[];
}

export const sourceOf = (speaker: Speaker, speed: number): Source => ({
  branches: branches(speaker.drivers, speaker.crossovers),
  alignments: speaker.designPoint && alignmentsOf(speaker.drivers, speaker.designPoint),
  corner: bodyCorner(Math.min(speaker.width, speaker.height), speed),
});

/**
 * The complex sum of all ways that carry sound. Drivers of unknown alignment count as arriving together, as if from
 * `aimed` mm away, so that no loss is made up at their crossover. `speed` is the speed of sound, m/s.
 */
export function fieldOf(
  source: Source,
  drivers: readonly PlacedDriver[],
  arrivals: readonly Arrival[],
  surfaces: number,
  aimed: number,
  speed: number,
): Field {
  const direct = silence();
  const bySurface: (Transfer | null)[] = Array.from({ length: surfaces }, () => null);
  const directWaves: Wave[] = [];
  for (const arrival of arrivals) {
    const wave = arrival.lands ? waveOf(source, drivers, arrival, aimed, speed) : null;
    if (!wave) continue;
    if (arrival.surface === null) {
      directWaves.push(wave);
      addWave(direct, wave);
    } else {
      const sum = bySurface[arrival.surface] ?? silence();
      bySurface[arrival.surface] = sum;
      addWave(sum, wave);
    }
  }
  const total = silence();
  addTransfer(total, direct);
  for (const sum of bySurface) if (sum) addTransfer(total, sum);
  return { direct, bySurface, total, directWaves };
}

/** Radians of phase or of ka for each Hz and mm. */
const perHertz = (speed: number): number => (2 * Math.PI) / (1000 * speed);

function waveOf(
  source: Source,
  drivers: readonly PlacedDriver[],
  arrival: Arrival,
  aimed: number,
  speed: number,
): Wave | null {
  const placed = drivers[arrival.driver];
  const branch = source.branches[arrival.driver];
  if (!placed || !branch) return null;
  const alignment = source.alignments?.[arrival.driver] ?? { advance: placed.distance - aimed, strength: 1 };
  return {
    gain: (alignment.strength * arrival.kept) / arrival.length,
    turn: perHertz(speed) * (arrival.length - alignment.advance),
    argument: perHertz(speed) * pistonRadius(placed.driver) * forwardSine(arrival.leaving),
    behind: inverseSquare(cornerBehind(source.corner, arrival.leaving)),
    screened: arrival.screen ? inverseSquare(bodyCorner(arrival.screen.width, speed)) : 0,
    branch,
  };
}

const inverseSquare = (corner: number): number => 1 / (corner * corner);
