import { freeName } from '$lib/project/names.ts';
import { migrate } from '$lib/project/migrate.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import { idOf, keyOf, newestCopy, COPIES, type Newest, type CopyIndex } from './copies.ts';
import { withValue } from '$lib/document/pointer.ts';
import { readSnapshot, writeSnapshot } from './snapshot.ts';
import { attempt, keysOf, type TextStore } from './storage.ts';
import { done, storageError, type StorageResult, type StorageError } from './storageError.ts';

/** What is kept of a project. */
export interface Content {
  /** The last sound project. */
  readonly project: Project;
  /** The last project whose geometry had an answer, where that is another: its drawing stays in view. */
  readonly answered?: Project;
  /** The document as typed: may be unsound. What somebody typed is kept even before it makes sense. */
  readonly draft: unknown;
}

/** One project in the store. */
export type Entry =
  | {
      readonly kind: 'whole';
      readonly id: string;
      readonly title: string;
      /** The last change, ms since 1970. */
      readonly saved: number;
      /** What its copies take, in characters. */
      readonly size: number;
    }
  | { readonly kind: 'unreadable'; readonly id: string; readonly size: number; readonly error: StorageError };

/** Where a write ended: what the next one must be based on. */
export interface Kept {
  readonly id: string;
  readonly stamp: string;
  readonly saved: number;
}

export interface Opened extends Kept {
  readonly content: Content;
  /** The newest copy could not be read; this is the one before it, and the last changes may be missing. */
  readonly recovered: boolean;
}

/** A project that was taken out of the store, whole or not: all that is needed to put it back. */
export interface Removed {
  readonly id: string;
  readonly texts: readonly (readonly [copy: CopyIndex, text: string])[];
}

const OPEN_KEY = 'wedgewright/open';

/** Long enough that two never meet. */
const ID_BYTES = 10;

/** Random, and made of what a key may hold. Needs no secure context. */
export const randomId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(ID_BYTES)), (byte) => byte.toString(36).padStart(2, '0')).join('');

/**
 * The projects that the browser keeps. There is no index that could be torn: the list is what the keys say. Nothing
 * throws, and no write goes over a copy that somebody else made since.
 */
export class ProjectStore {
  readonly #store: TextStore | null;
  readonly #newId: () => string;
  readonly #now: () => number;

  /** @param store null where the browser gives none: every answer is then `forbidden`. */
  constructor(store: TextStore | null, newId: () => string = randomId, now: () => number = Date.now) {
    this.#store = store;
    this.#newId = newId;
    this.#now = now;
  }

  /** Every project, the last changed first; what cannot be read comes last. */
  list(): StorageResult<readonly Entry[]> {
    return attempt(this.#store, (store) => {
      const ids = new Set(keysOf(store).flatMap((key) => idOf(key) ?? []));
      const order = (entry: Entry): number => (entry.kind === 'whole' ? entry.saved : -Infinity);
      return done([...ids].map((id) => entryOf(store, id)).sort((one, other) => order(other) - order(one) || 0));
    });
  }

  /** The newest whole copy of a project. */
  read(id: string): StorageResult<Opened> {
    return attempt(this.#store, (store) => {
      const newest = newestCopy(store, id);
      return newest.ok ? opened(id, newest.value) : newest;
    });
  }

  /** A new entry. */
  add(content: Content): StorageResult<Kept> {
    return attempt(this.#store, (store) => this.#write(store, this.#newId(), content, null));
  }

  /** A new entry under a title that no other one has: `Attic 2` where there is an `Attic`. */
  addCopy(content: Content): StorageResult<Kept> {
    const list = this.list();
    if (!list.ok) return list;
    const taken = list.value.flatMap((entry) => (entry.kind === 'whole' ? [entry.title] : []));
    return this.add(retitled(content, freeName(content.project.title, taken)));
  }

  /**
   * The next copy of a project, beside the one before. Refused as `conflict` when the newest copy is not the one that
   * `basedOn` stamps, and as `gone` when there is none any more.
   */
  write(id: string, content: Content, basedOn: string): StorageResult<Kept> {
    return attempt(this.#store, (store) => {
      const newest = newestCopy(store, id);
      if (!newest.ok) return newest;
      return newest.value.stamp === basedOn ? this.#write(store, id, content, newest.value) : storageError('conflict');
    });
  }

  /** A copy of a project as a new entry. */
  duplicate(id: string): StorageResult<Kept> {
    const found = this.read(id);
    return found.ok ? this.addCopy(found.value.content) : found;
  }

  /** Another title for a project that is not open here; one that is open gets its title by an edit. */
  rename(id: string, title: string): StorageResult<Kept> {
    const found = this.read(id);
    if (!found.ok) return found;
    const checked = checkProject({ ...found.value.content.project, title });
    if (!checked.ok) return { ok: false, error: { kind: 'unsound', faults: checked.faults } };
    return this.write(id, retitled(found.value.content, title), found.value.stamp);
  }

  /** Takes a project out of the store, readable or not. The answer puts it back. */
  remove(id: string): StorageResult<Removed> {
    return attempt(this.#store, (store) => {
      const removed = { id, texts: textsOf(store, id) };
      if (removed.texts.length === 0) return storageError('gone');
      for (const copy of COPIES) store.removeItem(keyOf(id, copy));
      return done(removed);
    });
  }

  /** Puts back what was removed. Where both copies do not fit any more, neither stays: it can be tried again. */
  restore({ id, texts }: Removed): StorageResult<string> {
    const restored = attempt(this.#store, (store) => {
      for (const [copy, text] of texts) store.setItem(keyOf(id, copy), text);
      return done(id);
    });
    if (!restored.ok) this.remove(id);
    return restored;
  }

  /** The raw copies of a project, to be saved as they are when nothing else can be done with them. */
  texts(id: string): StorageResult<readonly string[]> {
    return attempt(this.#store, (store) => {
      const texts = textsOf(store, id).map(([, text]) => text);
      return texts.length > 0 ? done(texts) : storageError('gone');
    });
  }

  /** The project that was open last; null when none was. */
  lastOpened(): StorageResult<string | null> {
    return attempt(this.#store, (store) => done(store.getItem(OPEN_KEY)));
  }

  /** Notes which project is open, for the next visit. */
  noteOpened(id: string): StorageResult<string> {
    return attempt(this.#store, (store) => {
      store.setItem(OPEN_KEY, id);
      return done(id);
    });
  }

  #write(
    store: TextStore,
    id: string,
    { project, answered, draft }: Content,
    newest: Newest | null,
  ): StorageResult<Kept> {
    const saved = this.#now();
    const revision = (newest?.body.revision ?? 0) + 1;
    const body = { revision, saved, title: project.title, project, ...(answered ? { answered } : {}) };
    const key = keyOf(id, newest?.copy === 0 ? 1 : 0);
    const text = writeSnapshot(sameJson(project, draft) ? body : { ...body, draft });
    store.setItem(key, text);
    const snapshot = readSnapshot(store.getItem(key) === text ? text : null);
    return snapshot.kind === 'whole' ? done({ id, stamp: snapshot.stamp, saved }) : storageError('unkept');
  }
}

const textsOf = (store: TextStore, id: string): Removed['texts'] =>
  COPIES.flatMap((copy) => {
    const text = store.getItem(keyOf(id, copy));
    return text === null ? [] : [[copy, text] as const];
  });

function entryOf(store: TextStore, id: string): Entry {
  const size = textsOf(store, id).reduce((sum, [, text]) => sum + text.length, 0);
  const newest = newestCopy(store, id);
  if (!newest.ok) return { kind: 'unreadable', id, size, error: newest.error };
  const { title, saved } = newest.value.body;
  return { kind: 'whole', id, title, saved, size };
}

function opened(id: string, { body, stamp, recovered }: Newest): StorageResult<Opened> {
  const checked = checkProject(body.project);
  if (!checked.ok) return { ok: false, error: { kind: 'unsound', faults: checked.faults } };
  const project = checked.value;
  const draft = body.draft === undefined ? project : brought(body.draft);
  const answered = body.answered === undefined ? null : checkProject(body.answered);
  const content = answered?.ok ? { project, answered: answered.value, draft } : { project, draft };
  return done({ id, stamp, saved: body.saved, recovered, content });
}

/** A document as typed, brought to the present version; one that cannot be stays as it is. */
function brought(draft: unknown): unknown {
  const now = migrate(draft);
  return now.ok ? now.value : draft;
}

/** The content under another title. A draft whose title is at fault gets a sound one with it. */
const retitled = (content: Content, title: string): Content =>
  title === content.project.title
    ? content
    : { ...content, project: { ...content.project, title }, draft: withValue(content.draft, '/title', title) };
