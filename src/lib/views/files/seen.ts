import type { Attachment } from 'svelte/attachments';

/** Calls once when the element first comes near what is on screen. */
export function whenSeen(call: () => void): Attachment {
  return (element) => {
    const watch = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        watch.disconnect();
        call();
      },
      { rootMargin: '200px' },
    );
    watch.observe(element);
    return () => watch.disconnect();
  };
}
