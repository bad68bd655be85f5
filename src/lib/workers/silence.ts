/**
 * How long a worker may send nothing while an answer is waited for, ms: between two messages lie some tens of milliseconds of
 * work, but its script may have to come over a slow line first.
 */
export const PATIENCE = 30_000;

/** A page that was asleep wakes up to timers long due: so many have to run out, or the worker would have had no time. */
const COUNTS = 2;

/** Calls once when a worker has been silent for too long. */
export class SilenceWatch {
  readonly #onSilent: () => void;
  #timer: ReturnType<typeof setTimeout> | null = null;

  constructor(onSilent: () => void) {
    this.#onSilent = onSilent;
  }

  /** From now on something is waited for: a question was asked, or a message has come and more are to follow. */
  wait(): void {
    this.rest();
    this.#count(COUNTS);
  }

  /** Nothing is waited for any more. */
  rest(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }

  #count(left: number): void {
    this.#timer = setTimeout(() => {
      this.#timer = null;
      if (left > 1) this.#count(left - 1);
      else this.#onSilent();
    }, PATIENCE / COUNTS);
  }
}
