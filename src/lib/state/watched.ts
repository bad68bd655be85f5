import { untrack } from 'svelte';
import { Cell, isFollowing } from './cell.svelte.ts';
import { valueAt } from './pointer.ts';

/**
 * Values of a document by their pointers, each watched by itself: who shows one has nothing to do when another changes.
 */
export class Watched {
  #document: unknown;
  readonly #cells = new Map<string, Cell>();

  constructor(document: unknown) {
    this.#document = document;
  }

  /** The value at a pointer; undefined where there is none. */
  at(pointer: string): unknown {
    // Outside what follows changes by itself there is nothing to watch.
    if (!isFollowing()) return valueAt(this.#document, pointer);
    let cell = this.#cells.get(pointer);
    if (cell === undefined) {
      // Made by nobody: whoever made it in the middle of following would not be told of its changes.
      cell = untrack(() => new Cell(valueAt(this.#document, pointer)));
      this.#cells.set(pointer, cell);
    }
    return cell.value;
  }

  /** Another document, none of which was changed in place. */
  follow(document: unknown): void {
    this.#document = document;
    for (const [pointer, cell] of this.#cells) cell.value = valueAt(document, pointer);
  }
}
