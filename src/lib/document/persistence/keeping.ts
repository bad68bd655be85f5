import { broadcastChannel, storageChannel } from './channel.ts';
import { Keeper, type Keepable } from './keeper.svelte.ts';
import { Shelf } from './shelf.ts';
import { SiteUpdate } from './siteUpdate.svelte.ts';
import { browserStore } from './storage.ts';
import type { Undo } from '$lib/document/undo.svelte.ts';

/** What keeps the open project in this browser, and the site itself up to date. */
export interface Keeping {
  readonly shelf: Shelf;
  readonly keeper: Keeper;
  readonly update: SiteUpdate;
  /** Ends it all. */
  readonly end: () => void;
}

/**
 * Begins to keep the project, for the window of a page that is alive.
 *
 * @param scripts paths of the scripts that the page came with.
 */
export function beginKeeping(open: Keepable, undo: Undo, frame: Window, scripts: readonly string[]): Keeping {
  const store = browserStore();
  const shelf = new Shelf(store);
  const keeper = new Keeper(open, undo, shelf, broadcastChannel() ?? (store && storageChannel(store, frame)));
  const update = new SiteUpdate();
  const ends = [
    keeper.attach(frame.document, frame),
    update.attach(frame.navigator.serviceWorker, frame.document, scripts),
  ];
  return { shelf, keeper, update, end: () => ends.forEach((end) => end()) };
}
