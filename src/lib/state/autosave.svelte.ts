import type { SaveStatus } from './saveStatus.ts';
import type { Outcome } from './trouble.ts';

/** From a change to its saving, ms: longer than between two keys, shorter than it takes to close a page. */
const SOON = 400;

/**
 * Saves soon after a change. The clock runs from the first change that is not saved, so that a long drag is saved on its
 * way too.
 */
export class Autosave {
  #status = $state.raw<SaveStatus>({ kind: 'untouched' });
  #timer: ReturnType<typeof setTimeout> | null = null;
  #changed = false;
  readonly #save: () => Outcome<{ readonly saved: number }>;

  /** @param save writes what is open now; must not throw. */
  constructor(save: () => Outcome<{ readonly saved: number }>) {
    this.#save = save;
  }

  get status(): SaveStatus {
    return this.#status;
  }

  /** Whether something would be lost if the page went away now. */
  get unsaved(): boolean {
    return this.#changed;
  }

  /** Something has changed. */
  touch(): void {
    this.#changed = true;
    if (this.#status.kind !== 'failed' && this.#status.kind !== 'saving') this.#status = { kind: 'saving' };
    this.#timer ??= setTimeout(() => this.flush(), SOON);
  }

  /** Saves now, if anything has changed since. Also tries again what has failed. */
  flush(): void {
    this.#stop();
    if (!this.#changed) return;
    const outcome = this.#save();
    this.#changed = !outcome.ok;
    this.#status = outcome.ok
      ? { kind: 'saved', at: outcome.value.saved }
      : { kind: 'failed', trouble: outcome.trouble };
  }

  /** Another document is open now, as the shelf has had it since `at`; null for one that is on no shelf yet. */
  settle(at: number | null): void {
    this.#stop();
    this.#changed = false;
    this.#status = at === null ? { kind: 'untouched' } : { kind: 'saved', at };
  }

  #stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}
