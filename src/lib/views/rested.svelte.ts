import { untrack } from 'svelte';

/** What counts as a pause between edits, ms: what nobody looks at between two keys can wait for it. */
const PAUSE = 100;

/** Follows a value once it has stayed the same for a while. To be made while a component is. */
export class Rested<Value> {
  #value: Value;
  readonly #read: () => Value;

  constructor(read: () => Value) {
    this.#read = read;
    this.#value = $state.raw(untrack(read));
    $effect(() => {
      if (read() === this.#value) return;
      const waiting = setTimeout(this.catchUp, PAUSE);
      return () => clearTimeout(waiting);
    });
  }

  /** As it was when it last came to rest. */
  get value(): Value {
    return this.#value;
  }

  /** Waits no longer. */
  readonly catchUp = (): void => {
    this.#value = untrack(this.#read);
  };
}
