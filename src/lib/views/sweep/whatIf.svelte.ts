import { createContext } from 'svelte';
import type { Plan } from '$lib/solution/document.ts';

/** The plan with another value, which nobody has entered: drawn while somebody looks at it. */
export interface Preview {
  readonly plan: Plan;
  /** Which value: `Ear height 1230 mm`. */
  readonly words: string;
}

/** Which number of the layout is looked at over a range, and which of its values the drawing shows meanwhile. */
export class WhatIf {
  #at = $state<string | null>(null);
  #preview = $state.raw<Preview | null>(null);

  /** Pointer of the number in the project; null while none is looked at. */
  get at(): string | null {
    return this.#at;
  }

  get preview(): Preview | null {
    return this.#preview;
  }

  ask(pointer: string): void {
    this.#at = pointer;
    this.#preview = null;
  }

  show(preview: Preview | null): void {
    this.#preview = preview;
  }

  close(): void {
    this.#at = null;
    this.#preview = null;
  }
}

/** Null on pages that have no drawing beside their fields. */
export const [useWhatIf, provideWhatIf] = createContext<WhatIf | null>();
