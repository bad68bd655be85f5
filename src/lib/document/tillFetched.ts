/** What tells that the network is back: a window, or a stand-in for one. */
type Frame = Pick<EventTarget, 'addEventListener' | 'removeEventListener'>;

/** Between two tries while nothing says that the network is back, ms. */
const PAUSE = 5000;

/**
 * Fetches a part of the program that the page cannot do without, again and again until it is there: after a pause, and at
 * once when the network is back. Never rejects.
 *
 * @param onMissing told of every try that failed.
 */
export async function tillFetched<Part>(
  load: () => Promise<Part>,
  frame: Frame,
  onMissing: () => void = () => undefined,
): Promise<Part> {
  for (;;) {
    try {
      return await load();
    } catch {
      onMissing();
      await untilWorthATry(frame);
    }
  }
}

const untilWorthATry = (frame: Frame): Promise<void> =>
  new Promise((resolve) => {
    const again = (): void => {
      clearTimeout(timer);
      frame.removeEventListener('online', again);
      resolve();
    };
    const timer = setTimeout(again, PAUSE);
    frame.addEventListener('online', again);
  });
