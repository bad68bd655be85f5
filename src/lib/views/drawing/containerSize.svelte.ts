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
  #size = $state.raw<Size>({ width: 0, height: 0 });

  readonly #printed: Size | null;

  /** @param size until it is seen. @param printed what the style sheet for print makes it, mm, so that a scale stays true there; else it is as it is. */
  constructor(size: Size, printed?: Size) {
    this.#size = size;
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
    return this.#size === this.#printed;
  }

  readonly attach: Attachment<Element> = (node) => {
    const observer = new ResizeObserver(([entry]) => {
      const { width = 0, height = 0 } = entry?.contentRect ?? {};
      const { width: before, height: heightBefore } = this.#size;
      if (width > 0 && height > 0 && (width !== before || height !== heightBefore)) this.#size = { width, height };
    });
    // Nothing is observed between the call for a print and the print itself.
    const print = (): void =>
      flushSync(() => {
        this.#size = this.#printed ?? this.#size;
      });
    const back = (): void => {
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
