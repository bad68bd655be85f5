import { untrack } from 'svelte';
import type { Project } from '$lib/project/project.ts';
import { Autosave } from './autosave.svelte.ts';
import type { SaveStatus } from './saveStatus.ts';
import type { Channel } from './channel.ts';
import { keepMine, settled, takeTheirs } from './conflict.ts';
import { whenHidden, type Visible } from './pageHide.ts';
import { randomId, type Content, type Kept, type Opened, type Removed, type ProjectStore } from './projectStore.ts';
import type { TabNews } from './tabNews.ts';
import { TabWatch } from './tabWatch.svelte.ts';
import { done, type StorageResult } from './storageError.ts';
import type { Editable, Undo } from '$lib/document/undo.svelte.ts';

/** The open project as its persistence sees it. */
export interface Persistable extends Editable {
  readonly project: Project;
  /** The last answer for the chosen layout; null when it never had one. */
  readonly shown: { readonly project: Project } | null;
  replace(project: Project): void;
}

/**
 * Keeps the open project in the store: saves it after changes, opens others in its place, and settles it with other tabs.
 * A project that nobody has changed yet (the example) is in no store. Nothing that is open gives way to something else
 * before it is kept.
 */
export class Persistence {
  #id = $state<string | null>(null);
  #stamp = '';
  #seen: unknown;
  readonly #open: Persistable;
  readonly #undo: Undo;
  readonly #projects: ProjectStore;
  readonly #autosave: Autosave;
  readonly #tabs: TabWatch;
  readonly #nobody: string;

  /**
   * @param channel to the other tabs; null where there is none.
   * @param tab what this tab is called among them.
   */
  constructor(
    open: Persistable,
    undo: Undo,
    projects: ProjectStore,
    channel: Channel | null,
    tab: string = randomId(),
  ) {
    this.#open = open;
    this.#undo = undo;
    this.#projects = projects;
    this.#seen = open.draft;
    this.#nobody = tab;
    this.#autosave = new Autosave(() => this.#save());
    this.#tabs = new TabWatch(channel, tab, this.#nobody);
  }

  /** The open project's place in the store; null while it has none. */
  get id(): string | null {
    return this.#id;
  }

  get status(): SaveStatus {
    return this.#autosave.status;
  }

  get news(): TabNews {
    return this.#tabs.news;
  }

  /** Opens what was open on the last visit. Null where there was nothing; the example stays then. */
  resume(): StorageResult<Opened> | null {
    const last = this.#projects.lastOpened();
    if (!last.ok) return last;
    return last.value === null ? null : this.openEntry(last.value);
  }

  /** Takes notice of an edit. To be called from an effect, or after each change. */
  follow(): void {
    const { draft } = this.#open;
    untrack(() => {
      if (draft === this.#seen) return;
      this.#seen = draft;
      this.#autosave.touch();
    });
  }

  /** What is open has been edited already: it is to be saved. */
  touch(): void {
    this.#autosave.touch();
  }

  /** Saves now what has changed; also tries again what has failed. */
  flush(): void {
    this.follow();
    this.#autosave.flush();
  }

  /**
   * Looks whether what was saved is still in the store: another tab may have deleted it, or somebody all that the browser
   * kept. Where it was gone and is back, it is saved again.
   */
  look(): void {
    const { status } = this.#autosave;
    if (this.#id === null) return;
    if (status.kind === 'failed' && status.error.kind === 'gone') this.flush();
    if (status.kind !== 'saved') return;
    const found = this.#projects.texts(this.#id);
    if (!found.ok && found.error.kind === 'gone') this.#autosave.lose(found.error);
  }

  /**
   * Opens another project of the store. Refused, with the reason, while what is open cannot be saved; where another tab
   * was first, it is saved as a copy.
   */
  openEntry(id: string): StorageResult<Opened> {
    const safe = this.#safe();
    return safe.ok ? this.#showEntry(id) : safe;
  }

  /**
   * A project from a file, a link or the example, as an entry of its own. Where the browser cannot keep it, it is open all
   * the same, what was open before is an undo away, and the error comes back.
   */
  take(project: Project): StorageResult<Opened> {
    const safe = this.#safe();
    const kept = safe.ok ? this.#projects.addCopy({ project, draft: project }) : safe;
    if (kept.ok) return this.#showEntry(kept.value.id);
    this.#undo.follow();
    this.#open.replace(project);
    this.#undo.follow();
    this.#place(null);
    this.#autosave.settle(null);
    this.follow();
    return kept;
  }

  /** Takes a project out of the store. The open one stays on the page, in no store until it is changed again. */
  remove(id: string): StorageResult<Removed> {
    if (id === this.#id) this.flush();
    const removed = this.#projects.remove(id);
    if (removed.ok && id === this.#id) {
      this.#place(null);
      this.#autosave.settle(null);
    }
    return removed;
  }

  /** After another tab was first: mine stays, theirs becomes a copy. Where theirs was deleted, mine is a new entry. */
  keepMine(): StorageResult<Kept> {
    if (this.#id === null) return this.#save();
    const outcome = keepMine(this.#projects, this.#id, this.#content());
    if (!outcome.ok) return outcome;
    const kept = outcome.value.value;
    this.#place(kept);
    this.#autosave.settle(kept.saved);
    this.#tabs.settle();
    this.#tabs.saved();
    return done(kept);
  }

  /** After another tab was first: theirs is opened; mine becomes a copy if it has changes of its own. */
  takeTheirs(): StorageResult<Opened> {
    this.follow();
    const id = this.#id ?? this.#nobody;
    const outcome = this.#autosave.unsaved
      ? takeTheirs(this.#projects, id, this.#content())
      : settled(this.#projects.read(id), null);
    if (!outcome.ok) return outcome;
    this.#show(outcome.value.value);
    return done(outcome.value.value);
  }

  /**
   * Ties the persistence to a page: saves when it is hidden, looks after what was saved when it is back or another tab has changed something, takes leave of the other tabs when it goes and greets them when it
   * is back, and has the browser ask before something is lost. Returns what undoes it.
   */
  attach(page: Visible, frame: EventTarget): () => void {
    const stop = whenHidden(page, frame, () => this.flush());
    const leave = (): void => this.#tabs.leave();
    const greet = (): void => this.#tabs.ask();
    const ask = (event: Event): void => {
      this.flush();
      if (this.#autosave.unsaved) event.preventDefault();
    };
    const look = (): void => this.look();
    const heard = [['pagehide', leave], ['pageshow', greet], ['beforeunload', ask], ['storage', look], ['focus', look]] as const; // prettier-ignore
    for (const [name, hear] of heard) frame.addEventListener(name, hear);
    return () => {
      stop();
      for (const [name, hear] of heard) frame.removeEventListener(name, hear);
      this.#tabs.close();
    };
  }

  #content(): Content {
    const { project, shown, draft } = this.#open;
    return shown === null || shown.project === project
      ? { project, draft }
      : { project, answered: shown.project, draft };
  }

  /** Whether what is open is kept, whatever comes in its place. */
  #safe(): StorageResult<unknown> {
    this.flush();
    const { status } = this.#autosave;
    if (status.kind !== 'failed') return done(null);
    const another = status.error.kind === 'conflict' || status.error.kind === 'gone';
    return another ? this.#projects.addCopy(this.#content()) : { ok: false, error: status.error };
  }

  #save(): StorageResult<Kept> {
    const content = this.#content();
    const kept = this.#id === null ? this.#projects.add(content) : this.#projects.write(this.#id, content, this.#stamp);
    if (kept.ok) {
      this.#place(kept.value);
      this.#tabs.saved();
    } else if (kept.error.kind === 'conflict') this.#tabs.overtake();
    return kept;
  }

  #showEntry(id: string): StorageResult<Opened> {
    const found = this.#projects.read(id);
    if (found.ok) this.#show(found.value);
    return found;
  }

  #show(opened: Opened): void {
    const { project, answered, draft } = opened.content;
    this.#open.replace(answered ?? project);
    // One after the other, as they were typed: what came before outlives what has no answer.
    if (answered !== undefined) this.#open.change(() => project);
    if (draft !== project) this.#open.change(() => draft);
    this.#seen = this.#open.draft;
    this.#undo.restart();
    this.#place(opened);
    this.#autosave.settle(opened.saved);
    this.#tabs.settle();
  }

  /** Where the open project is kept from now on. */
  #place(kept: Kept | null): void {
    this.#stamp = kept?.stamp ?? '';
    if (this.#id === (kept?.id ?? null)) return;
    this.#id = kept?.id ?? null;
    this.#tabs.turnTo(this.#id ?? this.#nobody);
    if (this.#id !== null) this.#projects.noteOpened(this.#id);
  }
}
