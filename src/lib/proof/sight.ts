import type { SideName } from '$lib/project/project.ts';
import type { Task } from './prove.ts';
import { readAt } from './reading.ts';
import { stood } from './standing.ts';
import type { Taken } from './taken.ts';

/** Where a light or a string along a face of the cabinet meets a card that stands plumb at the seat's head, square to the view. mm. */
export interface SightSpot {
  readonly side: SideName;
  /** The face: the cabinet's top, along its depth; or the baffle, square to it from the aimed point. */
  readonly on: 'top' | 'baffle';
  /** Desk frame: sideways from the desk's middle, and over the desk. */
  readonly x: number;
  readonly z: number;
  /** From the head's middle: to the right, and up. */
  readonly right: number;
  readonly over: number;
}

const FACES = ['baffle', 'top'] as const;

/** The spots of a stand that stands as planned; of a face that looks away from the card there is none. */
export function sightSpots(task: Task, side: SideName): readonly SightSpot[] {
  const { cabinet, planned, around, head } = task;
  const at = stood(cabinet, planned);
  return FACES.flatMap((on) => {
    const kind: Taken = { what: 'spot', on, x: 0, z: 0, sure: 1 };
    const found = readAt(kind, cabinet, at, around);
    if (found?.what !== 'spot') return [];
    const { x, z } = found;
    return [{ side, on, x, z, right: x - head.x, over: z - head.z }];
  });
}

/**
 * By how much a pointer points past its own body, radians: turned half a circle in its V, its two spots lie `apart` from each
 * other on a card `away`. The middle between them is where the body points.
 */
export const pointerError = (apart: number, away: number): number => Math.atan2(apart / 2, away);
