import { storageError, type StorageResult } from './storageError.ts';

/**
 * Where texts are kept: what `localStorage` offers. Chosen over a database because it writes at once, also while the page
 * is going away, and because several dozen projects of some 5 kB each fit well into the 5 MB that browsers grant.
 */
export type TextStore = Pick<Storage, 'length' | 'key' | 'getItem' | 'setItem' | 'removeItem'>;

/** The browser's own; null where there is none or the page may not have it: asking alone can throw. */
export function browserStore(): TextStore | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

/** The outcome of working with a store; whatever it throws comes back as error. */
export function attempt<Value>(
  store: TextStore | null,
  work: (store: TextStore) => StorageResult<Value>,
): StorageResult<Value> {
  if (store === null) return storageError('forbidden');
  try {
    return work(store);
  } catch (error) {
    return storageError(isFull(error) ? 'full' : 'forbidden');
  }
}

/** The second name is what older Firefox versions use (from memory). */
const isFull = (error: unknown): boolean =>
  error instanceof Error && ['QuotaExceededError', 'NS_ERROR_DOM_QUOTA_REACHED'].includes(error.name);

/** Every key of a store, taken at once: its order may change with the next write. */
export const keysOf = (store: TextStore): readonly string[] =>
  Array.from({ length: store.length }, (_, index) => store.key(index)).filter((key) => key !== null);
