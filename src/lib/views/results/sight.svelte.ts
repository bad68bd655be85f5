import type { Attachment } from 'svelte/attachments';

/** How far beyond the window's edge counts as in sight already, px: what is scrolled to is ready before it is seen. */
const MARGIN = '128px';

/** Whether an element is in sight, or nearly. */
export class Sight {
  #near = $state(false);

  get near(): boolean {
    return this.#near;
  }

  readonly attach: Attachment<Element> = (node) => {
    const observer = new IntersectionObserver((entries) => (this.#near = entries.at(-1)?.isIntersecting ?? false), {
      rootMargin: MARGIN,
    });
    observer.observe(node);
    return () => observer.disconnect();
  };
}
