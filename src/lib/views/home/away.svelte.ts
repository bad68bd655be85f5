import type { Attachment } from 'svelte/attachments';

/** Less of it than this in sight, and something is looked at no more. */
const LEAST = 0.7;

/** Whether an element has scrolled out of sight, upwards or down, but for a part too small to be looked at. */
export class Away {
  #is = $state(false);

  get is(): boolean {
    return this.#is;
  }

  readonly attach: Attachment<Element> = (node) => {
    const observer = new IntersectionObserver(
      ([entry]) => (this.#is = entry !== undefined && entry.intersectionRatio < LEAST),
      { threshold: LEAST },
    );
    observer.observe(node);
    return () => observer.disconnect();
  };
}
