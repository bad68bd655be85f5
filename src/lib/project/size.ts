import { MOST_LOCKED } from './limits.ts';
import { pointerTo, type Fault } from './fault.ts';

/** The longest list that a project may hold; a longer one would only take long to refuse entry by entry. */
const LONGEST_LIST = MOST_LOCKED;

interface Place {
  readonly value: unknown;
  readonly key: string | number;
  readonly above: Place | null;
}

/**
 * The first list or object with far too many entries, or null. Walks with a list of its own, so depth cannot exhaust the
 * stack, and stops at the first, so size costs no time.
 */
export function sizeFault(document: unknown): Fault | null {
  const waiting: Place[] = [{ value: document, key: '', above: null }];
  for (let place = waiting.pop(); place; place = waiting.pop()) {
    const { value } = place;
    if (typeof value !== 'object' || value === null) continue;
    const count = Array.isArray(value) ? value.length : Object.keys(value).length;
    if (count > LONGEST_LIST) {
      return { pointer: pointerOf(place), message: `expected at most ${LONGEST_LIST} entries, got ${count}` };
    }
    for (const [key, held] of Object.entries(value)) waiting.push({ value: held, key, above: place });
  }
  return null;
}

function pointerOf(place: Place): string {
  const steps: (string | number)[] = [];
  for (let at: Place | null = place; at?.above; at = at.above) steps.unshift(at.key);
  return pointerTo(...steps);
}
