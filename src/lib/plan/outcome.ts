import type { Fault } from '$lib/project/fault.ts';

/**
 * A plan, or why there is none: the project is unsound (its numbers contradict each other), or it is sound and its
 * geometry has no answer.
 */
export type Outcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly kind: 'unsound' | 'no-answer'; readonly faults: readonly Fault[] };
