import * as v from 'valibot';
import { failure, pointerTo, success, type Result } from './fault.ts';
import { got } from './got.ts';
import { entryAt, type List, type Named } from './layouts.ts';
import { name as oneLine } from './rules.ts';

/** The list with another name for one layout: one line that no other layout has. */
export function withLayoutRenamed<Entry extends Named>(
  layouts: List<Entry>,
  index: number,
  name: string,
): Result<List<Entry>> {
  const found = entryAt(layouts, index);
  if (!found.ok) return found;
  const pointer = pointerTo('layouts', index, 'name');
  const parsed = v.safeParse(oneLine(), name);
  if (!parsed.success) return failure({ pointer, message: parsed.issues[0].message });
  if (layouts.some((other, at) => at !== index && other.name === name)) {
    return failure({ pointer, message: `expected a name not used before, got ${got(name)}` });
  }
  return success(layouts.with(index, { ...found.value, name }));
}
