/** Why a worker does not do what it was asked. */
export type WorkerTrouble =
  /** Its script could not be fetched or started. */
  | { readonly kind: 'missing' }
  /** Something was thrown in it, or it said what nobody can read. */
  | { readonly kind: 'broken'; readonly message: string }
  /** It has said nothing for `PATIENCE`. */
  | { readonly kind: 'silent' };

/** For people: a sentence without its full stop, after `The sheets could not be laid out:`. */
export function workerTroubleWords(trouble: WorkerTrouble): string {
  switch (trouble.kind) {
    case 'missing':
      return 'the part of the program that does it could not be fetched or started; there may be no network just now';
    case 'broken':
      return `the part of the program that does it made a mistake (${trouble.message})`;
    case 'silent':
      return 'the part of the program that does it has stopped answering';
  }
}

export const broken = (error: unknown): WorkerTrouble => ({
  kind: 'broken',
  message: error instanceof Error ? error.message : String(error),
});

/** What an error event of a worker means: where no script ran, none has a message. */
export const troubleOf = (event: Event): WorkerTrouble =>
  'message' in event && typeof event.message === 'string' && event.message !== ''
    ? { kind: 'broken', message: event.message.replace(/^Uncaught (Error: )?/, '') }
    : { kind: 'missing' };

/**
 * How long a worker may say nothing while it is asked for something, ms: between two of its words lie some tens of
 * milliseconds of work, but its script may have to come over a slow line first.
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

  /** From now on something is waited for: a question was asked, or a word has come and more are to follow. */
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
