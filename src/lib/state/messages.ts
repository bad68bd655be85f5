import { rangeMessage } from '$lib/project/entry.ts';
import type { Fault } from '$lib/project/fault.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import { fieldAt, ownerOf } from './fields.ts';
import { valueAt } from './pointer.ts';

/**
 * What a fault says on the page. A number outside its range is told in the unit it was typed in; all else is told in the
 * fault's own words.
 */
export function messageOf(fault: Fault, draft: unknown, unit: LengthUnit): string {
  const field = fieldAt(fault.pointer);
  if (field?.kind !== 'number') return fault.message;
  const value = valueAt(draft, fault.pointer);
  return rangeMessage(value, field.range, unit) ?? fault.message;
}

/** The messages of all faults, by the pointer of the field or group they belong to. Faults of the whole are left out. */
export function messagesByOwner(
  faults: readonly Fault[],
  draft: unknown,
  unit: LengthUnit,
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const fault of faults) {
    const owner = ownerOf(fault.pointer);
    if (owner === null) continue;
    found.set(owner, [...(found.get(owner) ?? []), messageOf(fault, draft, unit)]);
  }
  return found;
}
