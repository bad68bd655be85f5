import { withValue } from './pointer.ts';

/** One change of a document: where, and the new value. */
export type Edit = readonly [pointer: string, value: unknown];

/** The document with every edit made, in their order. */
export const withEdits = (document: unknown, edits: readonly Edit[]): unknown =>
  edits.reduce((done, [pointer, value]) => withValue(done, pointer, value), document);
