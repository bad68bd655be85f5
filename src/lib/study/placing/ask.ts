import type { SideName } from '$lib/project/project.ts';
import type { Allowed, Stand } from './hit.ts';
import type { Box } from './leastMove.ts';
import type { Clearances } from './space.ts';
import type { Span } from './span.ts';

/** Stands that exist, and what may be moved to suit them. */
export interface PlaceAsk {
  readonly stands: Readonly<Record<SideName, ExistingStand>>;
  /** How the axes may miss: see `Allowed`. */
  readonly allowed: Allowed;
  readonly clear: Clearances;
  /** Where marks may lie, seen as those of the right loudspeaker, the left ones mirrored; null: marks stay. */
  readonly marks: Box | null;
  /** Setbacks and ear heights the listener may take up, mm; null: they stay. */
  readonly setback: Span | null;
  readonly earHeight: Span | null;
}

export interface ExistingStand extends Stand {
  /** Radians; null for a stand that turns with its loudspeaker. Only a base square to the desk fixes the toe. */
  readonly toe: number | null;
  /** Corners of its base about the mark (0, 0), untoed, seen as a right one; null where nobody knows: then the cabinet's bottom stands for it. */
  readonly footprint: readonly (readonly [number, number])[] | null;
}
