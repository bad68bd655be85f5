import type { SaveStatus } from './saveStatus.ts';
import type { StorageResult, StorageError } from './storageError.ts';

/** From a change to its saving, ms: longer than between two keys, shorter than it takes to close a page. */
const SOON = 400;
/** Changes closer together than this come of a drag, ms: saving would hold up its frames. */
const DRAGGED = 100;
/** So much later than that a drag is saved on its way, ms. */
const LATEST = 1600;

/** Saves soon after a change, from the first one on that is not saved; what goes on changing all the time somewhat later. */
export class Autosave {
  #status = $state.raw<SaveStatus>({ kind: 'untouched' });
  #timer: ReturnType<typeof setTimeout> | null = null;
  #changed = false;
  /** When it was changed last, ms since 1970. */
  #last = 0;
  readonly #save: () => StorageResult<{ readonly saved: number }>;

  /** @param save writes what is open now; must not throw. */
  constructor(save: () => StorageResult<{ readonly saved: number }>) {
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
    this.#last = Date.now();
    this.#timer ??= setTimeout(() => this.#calm(LATEST), SOON);
  }

  /** Saves now, if anything has changed since. Also tries again what has failed. */
  flush(): void {
    this.#stop();
    if (!this.#changed) return;
    const outcome = this.#save();
    this.#changed = !outcome.ok;
    this.#status = outcome.ok ? { kind: 'saved', at: outcome.value.saved } : { kind: 'failed', error: outcome.error };
  }

  /** Another document is open now, as the store has had it since `at`; null for one that is in no store yet. */
  settle(at: number | null): void {
    this.#stop();
    this.#changed = false;
    this.#status = at === null ? { kind: 'untouched' } : { kind: 'saved', at };
  }

  /** What had been saved is lost: it counts as changed again. */
  lose(error: StorageError): void {
    this.#stop();
    this.#changed = true;
    this.#status = { kind: 'failed', error };
  }

  /** Saves when the changes pause, or when that takes too long. `left`: until then, ms. */
  #calm(left: number): void {
    if (left <= 0 || Date.now() - this.#last >= DRAGGED) this.flush();
    else this.#timer = setTimeout(() => this.#calm(left - DRAGGED), DRAGGED);
  }

  #stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}
