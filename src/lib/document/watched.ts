import { createSubscriber } from 'svelte/reactivity';
import { valueAt } from './pointer.ts';

/** What is told when the value at a pointer changes, and the value that it was told of last. */
interface Told {
  value: unknown;
  readonly tell: () => void;
}

/**
 * Values of a document by their pointers, each followed by itself: whoever shows one has nothing to do when another
 * changes.
 */
export class Watched {
  #document: unknown;
  readonly #told = new Map<string, Told>();
  readonly #subscribers = new Map<string, () => void>();

  constructor(document: unknown) {
    this.#document = document;
  }

  /** The value at a pointer; undefined where there is none. */
  at(pointer: string): unknown {
    const known = this.#subscribers.get(pointer);
    const subscribe = known ?? this.#subscriber(pointer);
    if (known === undefined) this.#subscribers.set(pointer, subscribe);
    subscribe();
    return valueAt(this.#document, pointer);
  }

  /** Another document; the one before was not changed in place. */
  follow(document: unknown): void {
    this.#document = document;
    for (const [pointer, told] of this.#told) {
      const value = valueAt(document, pointer);
      if (Object.is(value, told.value)) continue;
      told.value = value;
      told.tell();
    }
  }

  #subscriber(pointer: string): () => void {
    return createSubscriber((tell) => {
      this.#told.set(pointer, { value: valueAt(this.#document, pointer), tell });
      return () => this.#told.delete(pointer);
    });
  }
}
