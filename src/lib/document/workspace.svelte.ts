import type { Fault, Result } from '$lib/project/fault.ts';
import type { Project } from '$lib/project/project.ts';
import { plainText } from '$lib/project/sentence.ts';
import type { Persistence } from '$lib/document/persistence/persistence.svelte.ts';
import type { InBrowser } from '$lib/document/persistence/inBrowser.ts';
import { layoutAfterUndo, layoutWithin } from './layoutShown.ts';
import { withLayouts, type LayoutOperation } from './layoutEdit.ts';
import type { OpenProject } from './openProject.svelte.ts';
import type { Opened, ProjectStore } from '$lib/document/persistence/projectStore.ts';
import type { SiteUpdate } from '$lib/document/persistence/siteUpdate.svelte.ts';
import { attempt, browserStore } from '$lib/document/persistence/storage.ts';
import { tillFetched } from './tillFetched.ts';
import {
  done,
  RECOVERED,
  storageError,
  storageErrorText,
  type StorageResult,
} from '$lib/document/persistence/storageError.ts';
import type { Undo } from './undo.svelte.ts';

/** Something to tell beside the drawing, until it is put away or something else is to be told. */
export interface Notice {
  readonly text: string;
  /** What exactly is wrong, line by line. */
  readonly faults?: readonly Fault[];
}

/** Whoever does one of these is about to edit. */
const TOUCHES = ['pointerdown', 'focusin', 'keydown'] as const;

const NOT_KEPT: Notice = {
  text: 'What keeps your work in this browser could not be fetched: there may be no network just now. It is tried again; until then, leave this page open.',
};

/** Does something when there is nothing else to do. Returns what calls it off. */
export type AtRest = (work: () => void) => () => void;

/**
 * What surrounds the open project: undo, the store, other tabs, files and links, and what there is to say of them. What
 * keeps and reads projects is fetched once it is needed: at once where there is something kept, or in the address; else
 * with the first touch of anything, or when the page has come to rest.
 */
export class Workspace {
  #inBrowser = $state.raw<InBrowser | null>(null);
  #notice = $state.raw<Notice | null>(null);
  #said = $state('');
  readonly #open: OpenProject;
  readonly #undo: Undo;
  /** What the page opened with. */
  readonly #first: unknown;
  /** Begins to keep; null before the page is alive, and when it has begun. */
  #waiting: (() => void) | null = null;

  constructor(open: OpenProject, undo: Undo) {
    this.#open = open;
    this.#undo = undo;
    this.#first = open.draft;
  }

  /** Null until it is needed. */
  get persistence(): Persistence | null {
    return this.#inBrowser?.persistence ?? null;
  }

  get projects(): ProjectStore | null {
    return this.#inBrowser?.projects ?? null;
  }

  get update(): SiteUpdate | null {
    return this.#inBrowser?.update ?? null;
  }

  /** Whether something would be lost if the page went away now. */
  get unsaved(): boolean {
    return this.persistence?.status.kind === 'failed';
  }

  get notice(): Notice | null {
    return this.#notice;
  }

  /** What has just happened, for a screen reader. */
  get said(): string {
    return this.#said;
  }

  /**
   * Begins to keep the project in this browser, and opens what the address carries or what was open last. Returns what
   * ends it. For the window of a page that is alive.
   *
   * @param scripts paths of the scripts that the page came with.
   */
  attach(frame: Window, scripts: readonly string[], atRest: AtRest): () => void {
    const ending = new AbortController();
    this.#waiting = () => void this.#begin(frame, scripts, ending.signal);
    const begin = (): void => this.#stopWaiting();
    const callOff = atRest(begin);
    for (const touch of TOUCHES) frame.addEventListener(touch, begin, { once: true, signal: ending.signal });
    if (frame.location.hash.length > 1 || hasKept()) begin();
    return () => {
      callOff();
      this.#waiting = null;
      ending.abort();
      this.#inBrowser?.end();
    };
  }

  /** Takes notice of edits. To be called from an effect. */
  follow(): void {
    this.#undo.follow();
    this.persistence?.follow();
    if (this.#open.draft !== this.#first) this.#stopWaiting();
  }

  /** Opens another project of the store in place of this one. */
  openEntry(id: string): StorageResult<Opened> {
    const opened = this.persistence?.openEntry(id) ?? storageError('forbidden');
    this.dismiss();
    if (opened.ok) this.#tell(opened);
    return opened;
  }

  /** Opens a project from elsewhere, as an entry of its own in the store. */
  take(project: Project): void {
    this.dismiss();
    const taken = this.persistence?.take(project);
    if (taken === undefined) this.#open.replace(project);
    else this.#tell(taken);
  }

  /** Opens what a file or a text holds. Where that is no project, its faults come back and nothing changes. */
  async takeFile(source: Blob | string): Promise<Result<Project>> {
    const { readProject } = await import('./importProject.ts');
    const read = await readProject(source);
    if (read.ok) this.take(read.value);
    return read;
  }

  /** Opens a file that was dropped on a page, and says what came of it in the notices. */
  async takeDropped(file: File): Promise<void> {
    const taken = await this.takeFile(file);
    if (!taken.ok) {
      this.notify({ text: `${file.name} was not opened. The project on the page is as it was.`, faults: taken.faults });
    } else if (this.#notice === null) this.notify({ text: `Opened ${file.name}.` });
  }

  undo(): void {
    this.#turn(() => this.#undo.undo());
  }

  redo(): void {
    this.#turn(() => this.#undo.redo());
  }

  /** Rearranges the layouts and shows the one at `shown`; where that cannot be done, says why. */
  arrange(operation: LayoutOperation, shown: number): Result<unknown> {
    const changed = withLayouts(this.#open.draft, operation);
    if (!changed.ok) {
      this.notify({ text: changed.faults.map(({ message }) => plainText(message)).join('; ') });
      return changed;
    }
    // A step of its own, whatever is being typed meanwhile.
    this.#undo.finish();
    this.#open.change(() => changed.value);
    this.#open.chooseLayout(layoutWithin(this.#open.draft, shown));
    return changed;
  }

  /** Tells a screen reader, and nobody else. */
  say(words: string): void {
    this.#said = words;
  }

  notify(notice: Notice): void {
    this.#notice = notice;
  }

  dismiss(): void {
    this.#notice = null;
  }

  #stopWaiting(): void {
    const begin = this.#waiting;
    this.#waiting = null;
    begin?.();
  }

  async #begin(frame: Window, scripts: readonly string[], signal: AbortSignal): Promise<void> {
    const { keepInBrowser } = await tillFetched(
      () => import('$lib/document/persistence/inBrowser.ts'),
      frame,
      () => this.notify(NOT_KEPT),
    );
    if (signal.aborted) return;
    if (this.#notice === NOT_KEPT) this.dismiss();
    const inBrowser = keepInBrowser(this.#open, this.#undo, frame, scripts);
    this.#inBrowser = inBrowser;
    frame.addEventListener('hashchange', () => void this.#takeAddress(frame), { signal });
    const taken = await this.#takeAddress(frame);
    if (taken || signal.aborted) return;
    // Whoever was quicker than that has begun something new: it is kept, and nothing comes in its place.
    if (this.#open.draft !== this.#first) inBrowser.persistence.touch();
    else this.#resume(inBrowser.persistence);
  }

  /**
   * Opens the project that the address carries after its `#`, and takes it off the address: a reload is not to open it
   * again. False where there is none; where there is one that cannot be read, says why.
   */
  async #takeAddress(frame: Window): Promise<boolean> {
    const { hash, pathname, search } = frame.location;
    if (hash.length < 2) return false;
    const { readLink } = await tillFetched(() => import('$lib/files/link.ts'), frame);
    const link = await readLink(hash);
    if (link.kind === 'none') return false;
    history.replaceState(history.state, '', pathname + search);
    if (link.kind === 'project') this.take(link.project);
    else this.notify({ text: 'The link was not opened. What you had is as it was.', faults: link.faults });
    return link.kind === 'project';
  }

  #resume(persistence: Persistence): void {
    const resumed = persistence.resume();
    if (resumed !== null) this.#tell(resumed);
  }

  #turn(step: () => { readonly message: string; readonly pointer: string } | null): void {
    const [before, index] = [this.#open.draft, this.#open.layoutIndex];
    const done = step();
    if (done === null) return;
    this.#said = done.message;
    this.#open.chooseLayout(layoutAfterUndo(before, this.#open.draft, index, done.pointer));
  }

  /** An outcome of opening something: what there is to say of it, if anything. */
  #tell(outcome: StorageResult<{ readonly recovered: boolean }>): void {
    if (!outcome.ok) this.notify({ text: storageErrorText(outcome.error) });
    else if (outcome.value.recovered) this.notify({ text: RECOVERED });
  }
}

/** Whether this browser keeps something for this page, whatever it is. */
function hasKept(): boolean {
  const kept = attempt(browserStore(), ({ length }) => done(length > 0));
  return kept.ok && kept.value;
}
