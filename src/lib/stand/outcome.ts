import type { Faulty, Result } from '$lib/project/fault.ts';
import type { Words } from '$lib/project/sentence.ts';

/**
 * A value, or why there is none: `unsound` when the project's own numbers contradict each other (a thin end under its
 * minimum), `no-answer` when they are sound and the geometry cannot be had (a rod that does not fit). Pointers are
 * relative to the layout.
 */
export type Outcome<Value> = Result<Value, Refusal>;

export interface Refusal extends Faulty {
  readonly kind: 'unsound' | 'no-answer';
}

export const built = <Value>(value: Value): Outcome<Value> => ({ ok: true, value });

export const unsound = (pointer: string, message: Words): Refusal => refusal('unsound', pointer, message);

export const noAnswer = (pointer: string, message: Words): Refusal => refusal('no-answer', pointer, message);

const refusal = (kind: Refusal['kind'], pointer: string, message: Words): Refusal => ({
  ok: false,
  kind,
  faults: [{ pointer, message }],
});
