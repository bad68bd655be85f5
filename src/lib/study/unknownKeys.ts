import { pointerTo, type Fault } from '$lib/project/fault.ts';

export type Document = Readonly<Record<string, unknown>>;

/** The keys of a document that are none of the known ones. @param at Its pointer. */
export const unknownKeys = (one: Document, known: readonly string[], at: string): Fault[] =>
  Object.keys(one)
    .filter((key) => !known.includes(key))
    .map((key) => ({ pointer: `${at}${pointerTo(key)}`, message: `unknown key, expected one of ${known.join(', ')}` }));
