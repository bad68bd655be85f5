import { listAt, stepsOf, valueAt } from './pointer.ts';

const namesIn = (document: unknown): readonly unknown[] =>
  listAt(document, '/layouts').map((layout) => valueAt(layout, '/name'));

/** An index held within the layouts of a document; 0 where it has none. */
export const layoutWithin = (document: unknown, index: number): number =>
  Math.max(0, Math.min(index, listAt(document, '/layouts').length - 1));

/**
 * Which layout to show after an undo or a redo: the one that came back, else the one that changed, else the one that was
 * shown, wherever it has gone.
 *
 * @param index the layout shown before.
 * @param pointer where the document changed.
 */
export function layoutAfterUndo(before: unknown, after: unknown, index: number, pointer: string): number {
  const [old, now] = [namesIn(before), namesIn(after)];
  const back = now.findIndex((name) => !old.includes(name));
  if (now.length > old.length && back >= 0) return back;
  const [list, at] = stepsOf(pointer);
  const rearranged = now.length !== old.length || now.every((name) => old.includes(name));
  const same = now.indexOf(old[index]);
  if (rearranged && now.some((name, place) => name !== old[place]) && same >= 0) return same;
  return layoutWithin(after, list === 'layouts' && at !== undefined ? Number(at) : index);
}
