import { rangeMessage } from '$lib/project/entry.ts';
import type { Fault } from '$lib/project/fault.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import { decimally, unitOf, type Lengths } from '$lib/project/units.ts';
import { fieldIn, ownerOf } from './fields.ts';
import { valueAt } from './pointer.ts';

/**
 * What a fault says on the page. A number outside its range is told in the unit it was typed in; all else as the fault has
 * it, with its lengths in the unit that is shown. Inches have decimals here: what is missing is often less than
 * the finest fraction shows, and advice rounded to that would not be enough.
 */
export function messageOf(fault: Fault, draft: unknown, lengths: Lengths): string {
  const field = fieldIn(draft, fault.pointer);
  const ranged = field?.kind === 'number' ? rangeMessage(valueAt(draft, fault.pointer), field, unitOf(lengths)) : null;
  return ranged ?? sentenceText(fault.message, decimally(lengths));
}

/** The messages of all faults, by the pointer of the field or group they belong to. Faults of the whole are left out. */
export function messagesByOwner(
  faults: readonly Fault[],
  draft: unknown,
  lengths: Lengths,
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const fault of faults) {
    const owner = ownerOf(fault.pointer);
    if (owner === null) continue;
    found.set(owner, [...(found.get(owner) ?? []), messageOf(fault, draft, lengths)]);
  }
  return found;
}
