import type { TextStore } from './storage.ts';

/** A line to the other tabs with this page. Nothing that comes over it can be trusted. */
export interface Channel {
  /** To every other tab; this one does not hear itself. */
  post(message: unknown): void;
  /** Returns what stops the hearing. */
  listen(hear: (message: unknown) => void): () => void;
  close(): void;
}

const NAME = 'wedgewright/tabs';

/** The browser's own channel; null where it has none. */
export function broadcastChannel(): Channel | null {
  if (typeof BroadcastChannel === 'undefined') return null;
  const line = new BroadcastChannel(NAME);
  return {
    post: (message) => line.postMessage(message),
    listen(hear) {
      const onMessage = ({ data }: MessageEvent<unknown>): void => hear(data);
      line.addEventListener('message', onMessage);
      return () => line.removeEventListener('message', onMessage);
    },
    close: () => line.close(),
  };
}

/**
 * The same over a store: its other users get a `storage` event for each write. Where the store takes nothing the message
 * is not sent; the check before each save still finds what another tab has done.
 *
 * @param frame gets the events: the window.
 */
export function storageChannel(store: TextStore, frame: EventTarget): Channel {
  const stops = new Set<() => void>();
  let count = 0;
  return {
    post(message) {
      try {
        // Without a number, the same message twice would be no change and no event.
        store.setItem(NAME, JSON.stringify({ number: (count += 1), message }));
        store.removeItem(NAME);
      } catch {
        return;
      }
    },
    listen(hear) {
      const onStorage = (event: Event): void => {
        if ('key' in event && event.key === NAME && 'newValue' in event && typeof event.newValue === 'string') {
          hear(messageIn(event.newValue));
        }
      };
      const stop = (): void => frame.removeEventListener('storage', onStorage);
      frame.addEventListener('storage', onStorage);
      stops.add(stop);
      return stop;
    },
    close() {
      for (const stop of stops) stop();
    },
  };
}

function messageIn(text: string): unknown {
  try {
    const parsed: unknown = JSON.parse(text);
    return typeof parsed === 'object' && parsed !== null && 'message' in parsed ? parsed.message : undefined;
  } catch {
    return undefined;
  }
}
