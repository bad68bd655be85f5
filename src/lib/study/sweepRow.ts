import type { Fault } from '$lib/project/fault.ts';

/** One value of the input, and what follows from it. */
export interface SweepRow {
  readonly at: number;
  readonly ok: boolean;
  /** By the names of the measures; null where there is no answer. */
  readonly values: Readonly<Record<string, number | null>>;
  /** Why there is no plan; null where there is one. */
  readonly reason: readonly Fault[] | null;
}
