import { flushSync } from 'svelte';
import type { Attachment } from 'svelte/attachments';

/** A CSS millimetre, px. */
const MM = 96 / 25.4;

/** px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element as it is resized, px; a stated one until the page is alive, and one of its own on paper. */
export class ContainerSize {
  #seen = $state.raw<Size>({ width: 0, height: 0 });
  #printing = $state(false);

  readonly #printed: Size | null;

  /** @param size until it is seen. @param printed what the style sheet for print makes it, mm, so that a scale stays true there; else it is as it is. */
  constructor(size: Size, printed?: Size) {
    this.#seen = size;
    this.#printed = printed ? { width: printed.width * MM, height: printed.height * MM } : null;
  }

  get width(): number {
    return this.#size.width;
  }

  get height(): number {
    return this.#size.height;
  }

  /** Whether it is the size on paper. */
  get printing(): boolean {
    return this.#printing && this.#printed !== null;
  }

  get #size(): Size {
    return (this.#printing ? this.#printed : null) ?? this.#seen;
  }

  readonly attach: Attachment<Element> = (node) => {
    const observer = new ResizeObserver(([entry]) => {
      const { width = 0, height = 0 } = entry?.contentRect ?? {};
      const { width: before, height: heightBefore } = this.#seen;
      if (width > 0 && height > 0 && (width !== before || height !== heightBefore)) this.#seen = { width, height };
    });
    // Nothing is observed between the call for a print and the print itself.
    const print = (): void =>
      flushSync(() => {
        this.#printing = true;
      });
    const back = (): void => {
      this.#printing = false;
      observer.unobserve(node);
      observer.observe(node);
    };
    observer.observe(node);
    window.addEventListener('beforeprint', print);
    window.addEventListener('afterprint', back);
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', print);
      window.removeEventListener('afterprint', back);
    };
  };
}
