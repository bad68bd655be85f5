/** At the latest after so long, ms: a busy page must not wait for ever. */
const LATEST = 1500;

/** Does something when the page has nothing else to do. Returns what calls it off. */
export function whenIdle(work: () => void): () => void {
  if (typeof requestIdleCallback === 'function') {
    const idle = requestIdleCallback(work, { timeout: LATEST });
    return () => cancelIdleCallback(idle);
  }
  const timer = setTimeout(work, 1);
  return () => clearTimeout(timer);
}
