import type { Attachment } from 'svelte/attachments';

/** The size of an element as it is resized, px; a stated one until the page is alive. */
export class ContainerSize {
  #size = $state.raw<{ readonly width: number; readonly height: number }>({ width: 0, height: 0 });

  constructor(width: number, height: number) {
    this.#size = { width, height };
  }

  get width(): number {
    return this.#size.width;
  }

  get height(): number {
    return this.#size.height;
  }

  readonly attach: Attachment<Element> = (node) => {
    const observer = new ResizeObserver(([entry]) => {
      const { width = 0, height = 0 } = entry?.contentRect ?? {};
      if (width > 0 && height > 0) this.#size = { width, height };
    });
    observer.observe(node);
    return () => observer.disconnect();
  };
}
