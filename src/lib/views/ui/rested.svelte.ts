import { untrack } from 'svelte';

/** What counts as a pause between edits, ms: what nobody looks at between two keys can wait for it. */
const PAUSE = 100;

/** Follows a value once it has stayed the same for a while. */
export class Rested<Value> {
  #value: Value;
  readonly #read: () => Value;

  constructor(read: () => Value) {
    this.#read = read;
    this.#value = $state.raw(untrack(read));
  }

  /** As it was when it last came to rest. */
  get value(): Value {
    return this.#value;
  }

  /** To be an effect. */
  readonly follow = (): (() => void) | undefined => {
    if (this.#read() === this.#value) return undefined;
    const waiting = setTimeout(this.catchUp, PAUSE);
    return () => clearTimeout(waiting);
  };

  /** Waits no longer. */
  readonly catchUp = (): void => {
    this.#value = untrack(this.#read);
  };
}
