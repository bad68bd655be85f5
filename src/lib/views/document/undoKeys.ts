import type { Workspace } from '$lib/document/workspace.svelte.ts';

/** What a key asks for: undo, redo, or nothing. Both ways of asking for redo are heard on every system. */
export function turnOf({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent): 'undo' | 'redo' | null {
  if (altKey || ctrlKey === metaKey) return null;
  const letter = key.toLowerCase();
  if (letter === 'z') return shiftKey ? 'redo' : 'undo';
  return letter === 'y' && ctrlKey && !shiftKey ? 'redo' : null;
}

/**
 * Undo and redo by keys. In a field whose typing is one step of undo (see `typingGesture`) they take back that step; in
 * every other field they are left to the browser, for what is typed there is not yet in the project.
 */
export function onUndoKey(event: KeyboardEvent, workspace: Workspace): void {
  const turn = turnOf(event);
  if (turn === null || event.defaultPrevented || isTextOfItsOwn(event.target)) return;
  event.preventDefault();
  workspace[turn]();
}

const isTextOfItsOwn = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && target.type === 'text' && target.closest('[data-steps]') === null;
