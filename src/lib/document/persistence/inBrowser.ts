import { broadcastChannel, storageChannel } from './channel.ts';
import { Persistence, type Persistable } from './persistence.svelte.ts';
import { ProjectStore } from './projectStore.ts';
import { SiteUpdate } from './siteUpdate.svelte.ts';
import { browserStore } from './storage.ts';
import type { Undo } from '$lib/document/undo.svelte.ts';

/** What keeps the open project in this browser, and the site itself up to date. */
export interface InBrowser {
  readonly projects: ProjectStore;
  readonly persistence: Persistence;
  readonly update: SiteUpdate;
  /** Ends it all. */
  readonly end: () => void;
}

/**
 * Begins to keep the project, for the window of a page that is alive.
 *
 * @param scripts paths of the scripts that the page came with.
 */
export function keepInBrowser(open: Persistable, undo: Undo, frame: Window, scripts: readonly string[]): InBrowser {
  const store = browserStore();
  const projects = new ProjectStore(store);
  const persistence = new Persistence(
    open,
    undo,
    projects,
    broadcastChannel() ?? (store && storageChannel(store, frame)),
  );
  const update = new SiteUpdate();
  const ends = [
    persistence.attach(frame.document, frame),
    update.attach(frame.navigator.serviceWorker, frame.document, scripts),
  ];
  return { projects, persistence, update, end: () => ends.forEach((end) => end()) };
}
