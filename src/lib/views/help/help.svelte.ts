import { createContext } from 'svelte';
import type { TermKey } from '$lib/project/fields/termKey.ts';

/** A term whose meaning is shown, and the button that asked for it. */
export interface Asked<Button = HTMLElement> {
  readonly term: TermKey;
  readonly button: Button;
}

/** How long a mouse must rest before the help opens, and how long it may be away on its way to the help itself, ms. */
const REST = 250;
const AWAY = 250;

/**
 * Which meaning is shown: one at a time. A mouse that rests, the keyboard's focus and a press open it; Escape, a press
 * elsewhere and going on close it. What a press has opened, a mouse that leaves does not close.
 */
export class Help<Button = HTMLElement> {
  #asked = $state.raw<Asked<Button> | null>(null);
  #kept = false;
  #timer: ReturnType<typeof setTimeout> | null = null;

  get asked(): Asked<Button> | null {
    return this.#asked;
  }

  /** A mouse has come to rest on a button, or on the help. */
  rest(asked: Asked<Button>): void {
    this.#after(REST, () => this.#show(asked, false));
  }

  /** The focus has come by key. */
  focus(asked: Asked<Button>): void {
    this.#show(asked, false);
  }

  /** The mouse or the focus has gone. */
  leave(): void {
    if (!this.#kept) this.#after(AWAY, () => this.close());
    else this.#stop();
  }

  /** The mouse is on the help itself: it stays. */
  stay(): void {
    this.#stop();
  }

  press(asked: Asked<Button>): void {
    if (this.#kept && this.#asked?.button === asked.button) this.close();
    else this.#show(asked, true);
  }

  close(): void {
    this.#stop();
    this.#kept = false;
    this.#asked = null;
  }

  #show(asked: Asked<Button>, kept: boolean): void {
    this.#stop();
    this.#kept = kept;
    this.#asked = asked;
  }

  #after(wait: number, then: () => void): void {
    this.#stop();
    this.#timer = setTimeout(then, wait);
  }

  #stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}

/** The help of the page: the frame provides it. */
export const [useHelp, provideHelp] = createContext<Help>();

/** Id of the element that shows the meaning. */
export const HELP_ID = 'help';
