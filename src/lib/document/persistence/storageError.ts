import { faultLine, type Fault, type Result } from '$lib/project/fault.ts';

/** Why something could not be kept in the browser, or not be found there. */
export type StorageError =
  /** No storage, or none that this page may use. */
  | { readonly kind: 'forbidden' }
  /** No room left. */
  | { readonly kind: 'full' }
  /** The browser took it and did not keep it. */
  | { readonly kind: 'unkept' }
  /** Not there, or not any more. */
  | { readonly kind: 'gone' }
  /** There, but no copy of it is whole. */
  | { readonly kind: 'damaged' }
  /** Kept by a newer Wedgewright; not touched. */
  | { readonly kind: 'newer' }
  /** Whole, but no sound project. */
  | { readonly kind: 'unsound'; readonly faults: readonly Fault[] }
  /** Changed since it was read: another tab saved it. */
  | { readonly kind: 'conflict' };

/** A value, or why there is none. Never an exception. */
export type StorageResult<Value> = Result<Value, { readonly ok: false; readonly error: StorageError }>;

export const done = <Value>(value: Value): StorageResult<Value> => ({ ok: true, value });
export const storageError = (kind: Exclude<StorageError['kind'], 'unsound'>): StorageResult<never> => ({
  ok: false,
  error: { kind },
});

/** What happened and what to do, for people. */
export function storageErrorText(of: StorageError): string {
  switch (of.kind) {
    case 'forbidden':
      return 'This browser keeps nothing for this page. Save the project as a file before you leave.';
    case 'full':
      return 'The browser has no room left. Save the project as a file, or delete a project that you no longer need.';
    case 'unkept':
      return 'The browser did not keep what it was given. Save the project as a file before you leave.';
    case 'gone':
      return 'This project is no longer kept in the browser: it was deleted in another tab, or the browser’s storage was cleared.';
    case 'damaged':
      return 'No copy of this project in the browser can be read any more.';
    case 'newer':
      return 'A newer Wedgewright kept this project. Reload the page to open it; it has not been changed.';
    case 'unsound':
      return `This project cannot be opened: ${of.faults.map(faultLine).join('; ')}`;
    case 'conflict':
      return 'Another tab has changed this project. Keep yours or take theirs; the other one stays as a copy.';
  }
}

/** For a message after a recovery. */
export const RECOVERED =
  'The newest copy of this project in the browser could not be read. This is the one before it; the last changes may be missing.';
