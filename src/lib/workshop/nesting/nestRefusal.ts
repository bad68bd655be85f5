import type { Words } from '$lib/project/sentence.ts';

/** Why a part cannot lie where somebody wants it. */
export type RefusalReason = 'no-part' | 'too-many' | 'no-sheet' | 'grain' | 'margin' | 'overlap';

/** A part that was not put, or not kept, where somebody wanted it. */
export interface Refusal {
  readonly reason: RefusalReason;
  /** A sentence part with the numbers: `expected …, got …`. */
  readonly message: Words;
}
