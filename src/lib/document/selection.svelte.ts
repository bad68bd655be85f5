import { thingAt, type Chosen, type Thing } from '$lib/drawing/thing.ts';

/** What is chosen on the page: the drawing and the form light up the same. It is no part of the project. */
export class Selection {
  #chosen = $state.raw<Chosen | null>(null);

  get chosen(): Chosen | null {
    return this.#chosen;
  }

  /** A number of the project, or what a group of numbers describes, by its pointer. */
  choose(pointer: string, isValue: boolean): void {
    const thing = thingAt(pointer);
    if (isValue) this.#chosen = { kind: 'value', pointer };
    else this.#chosen = thing === null ? null : { kind: 'thing', thing };
  }

  chooseThing(thing: Thing): void {
    this.#chosen = { kind: 'thing', thing };
  }

  clear(): void {
    this.#chosen = null;
  }
}
