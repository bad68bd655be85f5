import { withLayoutInserted } from '$lib/project/layouts.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { LayoutOperation } from '$lib/document/layoutEdit.ts';
import { withEdits, type Change } from '$lib/study/input.ts';

/**
 * Adds what a search found as a layout of its own, after the one that was searched.
 *
 * @param name What it is; a number after it where another one has the name.
 * @param onnamed Told what it is called in the end.
 */
export const addFound =
  (of: Plan, edits: readonly Change[], name: string, onnamed: (name: string) => void): LayoutOperation =>
  (layouts) => {
    const added = withLayoutInserted(layouts, of.layoutIndex + 1, { ...withEdits(of.layout, edits), name });
    if (added.ok) onnamed(added.value[of.layoutIndex + 1]?.name ?? name);
    return added;
  };
