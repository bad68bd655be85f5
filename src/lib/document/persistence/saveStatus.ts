import { storageErrorText, type StorageError } from './storageError.ts';

/** How the open project stands to its copy in the browser. */
export type SaveStatus =
  /** Nothing to save yet. */
  | { readonly kind: 'untouched' }
  /** Changed, and about to be saved. */
  | { readonly kind: 'saving' }
  /** As it is in the store. `at`: ms since 1970. */
  | { readonly kind: 'saved'; readonly at: number }
  /** Changed, and not saved. The next change, or asking, tries again. */
  | { readonly kind: 'failed'; readonly error: StorageError };

/** The status for people. `time` writes a time as they read it: `14:03`. */
export function saveWords(status: SaveStatus, time: (at: number) => string): string {
  switch (status.kind) {
    case 'untouched':
      return 'Nothing to save yet';
    case 'saving':
      return 'Saving';
    case 'saved':
      return `Saved at ${time(status.at)}`;
    case 'failed':
      return `Not saved. ${storageErrorText(status.error)}`;
  }
}
