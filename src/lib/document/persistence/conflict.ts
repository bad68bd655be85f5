import { sameJson } from '$lib/project/sameJson.ts';
import type { Content, Kept, Opened, ProjectStore } from './projectStore.ts';
import { done, type StorageResult } from './storageError.ts';

/**
 * Two tabs have changed one project. Whichever is kept, the other becomes an entry of its own first, so that nothing is
 * lost when a step fails.
 */

export interface Settlement<Value> {
  readonly value: Value;
  /** The copy of what was not kept; null where there was nothing to copy: no theirs that can be read, or both the same. */
  readonly copy: Kept | null;
}

/** Mine stays, and theirs goes in the store as a copy. Where theirs cannot be read, mine is a new entry beside it. */
export function keepMine(projects: ProjectStore, id: string, mine: Content): StorageResult<Settlement<Kept>> {
  const theirs = projects.read(id);
  if (!theirs.ok) return settled(projects.add(mine), null);
  if (sameJson(mine, theirs.value.content)) return settled(theirs, null);
  const copy = projects.addCopy(theirs.value.content);
  return copy.ok ? settled(projects.write(id, mine, theirs.value.stamp), copy.value) : copy;
}

/** Theirs is read, and mine goes in the store as a copy. */
export function takeTheirs(projects: ProjectStore, id: string, mine: Content): StorageResult<Settlement<Opened>> {
  const theirs = projects.read(id);
  if (!theirs.ok || sameJson(mine, theirs.value.content)) return settled(theirs, null);
  const copy = projects.addCopy(mine);
  return copy.ok ? settled(theirs, copy.value) : copy;
}

/** What was settled on, with the copy that was made on the way. */
export const settled = <Value>(outcome: StorageResult<Value>, copy: Kept | null): StorageResult<Settlement<Value>> =>
  outcome.ok ? done({ value: outcome.value, copy }) : outcome;
