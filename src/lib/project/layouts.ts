import { failure, pointerTo, success, type Result } from './fault.ts';
import { freeName } from './names.ts';
import { MOST_LAYOUTS } from './limits.ts';

/**
 * What can be done with a project's list of layouts. Each answers with a new list that shares the layouts it did not
 * touch, or with the reason why not; an index outside the list is refused like any other value. Whatever has a name can be
 * in the list, so that a document with a fault elsewhere can still be rearranged.
 */
export interface Named {
  readonly name: string;
}

export type List<Entry extends Named> = readonly Entry[];

/** The list with a copy of one layout at its end, under a name of its own. */
export function withLayoutAdded<Entry extends Named>(layouts: List<Entry>, like: number): Result<List<Entry>> {
  return copied(layouts, like, layouts.length);
}

/** The list with a copy of one layout right after it, under a name of its own. */
export function withLayoutDuplicated<Entry extends Named>(layouts: List<Entry>, index: number): Result<List<Entry>> {
  return copied(layouts, index, index + 1);
}

function copied<Entry extends Named>(layouts: List<Entry>, like: number, to: number): Result<List<Entry>> {
  const found = entryAt(layouts, like);
  if (!found.ok) return found;
  return withLayoutInserted(layouts, to, found.value);
}

/** The list with another layout at a place, under a name of its own. */
export function withLayoutInserted<Entry extends Named>(
  layouts: List<Entry>,
  to: number,
  layout: Entry,
): Result<List<Entry>> {
  if (layouts.length >= MOST_LAYOUTS) {
    return failure({
      pointer: '/layouts',
      message: `expected at most ${MOST_LAYOUTS} layouts, got ${layouts.length + 1}: delete one first`,
    });
  }
  const named = { ...layout, name: freeName(layout.name, layouts.map(({ name }) => name)) }; // prettier-ignore
  return success(layouts.toSpliced(to, 0, named));
}

/** The list without one layout. The last one stays: a project without a layout has nothing to show. */
export function withoutLayout<Entry extends Named>(layouts: List<Entry>, index: number): Result<List<Entry>> {
  const found = entryAt(layouts, index);
  if (!found.ok) return found;
  return layouts.length > 1
    ? success(layouts.toSpliced(index, 1))
    : failure({ pointer: '/layouts', message: 'expected at least one layout, got none: the last one stays' });
}

/** The list with one layout moved to another place; the others keep their order. */
export function withLayoutMoved<Entry extends Named>(
  layouts: List<Entry>,
  from: number,
  to: number,
): Result<List<Entry>> {
  const found = entryAt(layouts, from);
  const target = entryAt(layouts, to);
  if (!found.ok) return found;
  return target.ok ? success(layouts.toSpliced(from, 1).toSpliced(to, 0, found.value)) : target;
}

/** Where the layout at `index` has gone after a move: what keeps the same layout chosen. */
export function indexAfterMove(index: number, from: number, to: number): number {
  if (index === from) return to;
  if (from < index && index <= to) return index - 1;
  return to <= index && index < from ? index + 1 : index;
}

/** The layout at a place, or the fault of a place that is none. */
function entryAt<Entry extends Named>(layouts: List<Entry>, index: number): Result<Entry> {
  const entry = layouts[index];
  return entry === undefined
    ? failure({
        pointer: pointerTo('layouts', index),
        message: `expected the place of a layout from 0 to ${layouts.length - 1}, got ${index}`,
      })
    : success(entry);
}
