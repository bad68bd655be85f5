import { countedAt, countedValues, isEntered } from '$lib/project/counted.ts';
import { valueAt, withValue } from './pointer.ts';

/** The document, telling that the user entered the values at these pointers. What is not counted, or counts so already, stays as it is. */
export const withEntered = (document: unknown, pointers: readonly string[]): unknown =>
  pointers.reduce((done, pointer) => {
    const place = countedAt(pointer);
    if (place === null) return done;
    const entered = valueAt(done, `${place.thing}/entered`);
    return Array.isArray(entered) && !isEntered(entered, place.key)
      ? withValue(done, `${place.thing}/entered`, [...entered, place.key])
      : done;
  }, document);

/** The document, telling that the values at these pointers are nobody's measurement. */
export const withNotEntered = (document: unknown, pointers: readonly string[]): unknown =>
  pointers.reduce((done, pointer) => {
    const place = countedAt(pointer);
    if (place === null) return done;
    const entered = valueAt(done, `${place.thing}/entered`);
    if (!isEntered(entered, place.key)) return done;
    // A thing that does not tell is all the user's own: from now on it tells of all the others.
    const keys: readonly unknown[] = Array.isArray(entered) ? entered : countedValues[place.kind];
    return withValue(
      done,
      `${place.thing}/entered`,
      keys.filter((key) => key !== place.key),
    );
  }, document);
