import { plainText, type Words } from './sentence.ts';

/** One thing wrong with a document: where, and what was expected. */
export interface Fault {
  /** JSON pointer (RFC 6901) of the value; empty for the document as a whole. */
  readonly pointer: string;
  /** What was expected and what was found, as one sentence part: `expected a length over 0 mm, got -5`; put into words last. */
  readonly message: Words;
}

/** A value, or why there is none: faults, unless said otherwise. Never both, never an exception. */
export type Result<Value, Failure extends { readonly ok: false } = Faulty> =
  { readonly ok: true; readonly value: Value } | Failure;

export interface Faulty {
  readonly ok: false;
  readonly faults: readonly Fault[];
}

export const success = <Value>(value: Value): Result<Value> => ({ ok: true, value });
export const failure = (...faults: readonly Fault[]): Result<never> => ({ ok: false, faults });

/**
 * What to tell of an exception that nobody foresaw: a mistake of this program, which must not cost what was typed.
 *
 * @param pointer The value that was being worked on, where that is known.
 */
export const unforeseen = (error: unknown, pointer = ''): Fault => ({
  pointer,
  message: `these values could not be worked out, which is a mistake of the program (${error instanceof Error ? error.message : String(error)}). What you typed is kept; other values may do`,
});

/** A JSON pointer from its steps, escaped as RFC 6901 asks. */
export const pointerTo = (...steps: readonly (string | number)[]): string =>
  steps.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** The line that the command shows, and a page that has no project yet: pointer, colon, message in mm. */
export const faultLine = ({ pointer, message }: Fault): string => `${pointer || '/'}: ${plainText(message)}`;
