/** What tells that a page goes out of sight: a document, or a stand-in for one. */
export interface Visible extends EventTarget {
  readonly visibilityState: string;
}

/**
 * Calls `hide` whenever the page is hidden or left: the last moment in which a page may write for certain. Both events are
 * heard, because a phone may end a hidden page without another word, and a link may leave one that was never hidden.
 * Returns what stops it.
 */
export function whenHidden(page: Visible, frame: EventTarget, hide: () => void): () => void {
  const onVisibility = (): void => {
    if (page.visibilityState === 'hidden') hide();
  };
  page.addEventListener('visibilitychange', onVisibility);
  frame.addEventListener('pagehide', hide);
  return () => {
    page.removeEventListener('visibilitychange', onVisibility);
    frame.removeEventListener('pagehide', hide);
  };
}
