import { changedAt, isHeld, isIndex, isIndexOrEnd } from '$lib/project/changedAt.ts';
import { pointerTo } from '$lib/project/fault.ts';

/**
 * Reading and changing a plain JSON value at a JSON pointer (RFC 6901). Nothing is ever changed in place: what lies off the
 * way to the pointer is shared with the old value.
 */

/** Pointers that have been taken apart: every field asks for the same one with every edit. */
const known = new Map<string, readonly string[]>();
const MOST_KNOWN = 2000;

/** The steps of a pointer, unescaped. */
export function stepsOf(pointer: string): readonly string[] {
  const found = known.get(pointer);
  if (found !== undefined) return found;
  if (known.size >= MOST_KNOWN) known.clear();
  const steps = pointer === '' ? [] : pointer.slice(1).split('/').map(unescaped);
  known.set(pointer, steps);
  return steps;
}

const unescaped = (step: string): string => step.replaceAll('~1', '/').replaceAll('~0', '~');

/** The pointer one step up; null at the top. */
export const parentOf = (pointer: string): string | null =>
  pointer === '' ? null : pointer.slice(0, pointer.lastIndexOf('/'));

/** The value at the pointer; undefined where there is none. Inherited properties do not count. */
export function valueAt(document: unknown, pointer: string): unknown {
  let value = document;
  for (const step of stepsOf(pointer)) {
    if (!isHeld(value) || !Object.hasOwn(value, step)) return undefined;
    value = value[step];
  }
  return value;
}

/** The list at the pointer; empty where there is none. */
export function listAt(document: unknown, pointer: string): readonly unknown[] {
  const value = valueAt(document, pointer);
  return Array.isArray(value) ? value : [];
}

/**
 * The document with the value at the pointer. A missing last key is added, an index one past a list's end appends; where
 * the way to the pointer does not exist the document comes back as it was.
 */
export function withValue(document: unknown, pointer: string, value: unknown): unknown {
  return changedAt(document, stepsOf(pointer), () => value, isIndexOrEnd);
}

/** The document without the value at the pointer: a key goes, a list closes up. */
export function withoutValue(document: unknown, pointer: string): unknown {
  const steps = stepsOf(pointer);
  const last = steps.at(-1);
  if (last === undefined || valueAt(document, pointer) === undefined) return document;
  return changedAt(document, steps.slice(0, -1), (parent) => without(parent, last), isIndex);
}

function without(parent: unknown, key: string): unknown {
  if (Array.isArray(parent)) return parent.filter((_, index) => String(index) !== key);
  return isHeld(parent) ? Object.fromEntries(Object.entries(parent).filter(([name]) => name !== key)) : parent;
}

/** The pointer with every list index written as `*`: how tables name the same field of every entry. */
export const patternOf = (pointer: string): string =>
  pointerTo(...stepsOf(pointer).map((step) => (/^\d+$/.test(step) ? '*' : step)));
