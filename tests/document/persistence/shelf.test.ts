import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Project } from '$lib/project/project.ts';
import { keepMine, takeTheirs } from '$lib/document/persistence/conflict.ts';
import { keyOf } from '$lib/document/persistence/copies.ts';
import { randomId, Shelf, type Content, type Kept } from '$lib/document/persistence/shelf.ts';
import { writeSlot } from '$lib/document/persistence/slot.ts';
import { attempt, browserStore } from '$lib/document/persistence/storage.ts';
import {
  done,
  storageError,
  storageErrorText,
  type StorageResult,
  type StorageError,
} from '$lib/document/persistence/storageError.ts';
import { demoWith, project } from '../../projects.ts';
import { FakeStore } from './store.ts';
import { runs } from '../../runs.ts';

const EAR = '/layouts/0/listener/earHeight';
const DAMAGED = 'no copy';

const sound = (changes: Readonly<Record<string, unknown>> = {}): Content => {
  const made: Project = project(changes);
  return { project: made, draft: made };
};

function newShelf(store: FakeStore = new FakeStore()) {
  let ids = 0;
  let time = 1000;
  const shelf = new Shelf(
    store,
    () => `id${(ids += 1)}`,
    () => (time += 1),
  );
  return { store, shelf };
}

function valueOf<Value>(outcome: StorageResult<Value>): Value {
  if (!outcome.ok) throw new Error(storageErrorText(outcome.error));
  return outcome.value;
}

/** Writes the contents one after the other, each based on the one before. */
function written(shelf: Shelf, first: Content, ...more: readonly Content[]): Kept {
  return more.reduce((kept, content) => valueOf(shelf.write(kept.id, content, kept.stamp)), valueOf(shelf.add(first)));
}

const titles = (shelf: Shelf): string[] =>
  valueOf(shelf.list()).map((entry) => (entry.kind === 'whole' ? entry.title : DAMAGED));

describe('a shelf of projects', () => {
  it('keeps a project and gives it back', () => {
    const { shelf } = newShelf();
    const kept = written(shelf, sound(), sound({ [EAR]: 1200 }));
    expect(shelf.read(kept.id)).toEqual(done({ ...kept, recovered: false, content: sound({ [EAR]: 1200 }) }));
  });

  it('keeps what was typed before it makes sense', () => {
    const { shelf } = newShelf();
    const content = { project: project(), draft: demoWith({ [EAR]: 'twelve' }) };
    expect(valueOf(shelf.read(written(shelf, content).id)).content).toEqual(content);
  });

  it('lists projects with the last changed first, and says their size', () => {
    const { shelf, store } = newShelf();
    const attic = written(shelf, sound({ '/title': 'Attic' }));
    written(shelf, sound({ '/title': 'Cellar' }));
    const rewritten = valueOf(shelf.write(attic.id, sound({ '/title': 'Attic' }), attic.stamp));
    const list = valueOf(shelf.list());
    expect(titles(shelf)).toEqual(['Attic', 'Cellar']);
    expect(list[0]).toMatchObject({ kind: 'whole', id: attic.id, saved: rewritten.saved });
    const texts = Object.entries(store.everything).filter(([key]) => key.includes(attic.id));
    expect(list[0]?.size).toBe(texts.reduce((sum, [, text]) => sum + text.length, 0));
  });

  it('takes no notice of what else is in the store', () => {
    const { shelf, store } = newShelf();
    store.setItem('theme', 'dark');
    store.setItem('wedgewright/open', 'id1');
    store.setItem('wedgewright/shelf/', 'x');
    expect(shelf.list()).toEqual(done([]));
  });

  it('gives each copy a title of its own', () => {
    const { shelf } = newShelf();
    const { id } = written(shelf, sound({ '/title': 'Attic' }));
    const copy = valueOf(shelf.duplicate(id));
    valueOf(shelf.addCopy(sound({ '/title': 'Attic' })));
    valueOf(shelf.addCopy(sound({ '/title': 'Cellar' })));
    expect(titles(shelf)).toEqual(['Cellar', 'Attic 3', 'Attic 2', 'Attic']);
    const { project: copied, draft } = valueOf(shelf.read(copy.id)).content;
    expect(copied).toEqual(project({ '/title': 'Attic 2' }));
    expect(draft).toEqual(copied);
  });

  it('renames, and refuses what is no title', () => {
    const { shelf } = newShelf();
    const { id } = written(shelf, sound());
    valueOf(shelf.rename(id, 'Attic'));
    expect(titles(shelf)).toEqual(['Attic']);
    expect(valueOf(shelf.read(id)).content.project).toEqual(project({ '/title': 'Attic' }));
    expect(shelf.rename(id, ' ')).toEqual({
      ok: false,
      error: {
        kind: 'unsound',
        faults: [{ pointer: '/title', message: 'expected one line of 1 to 200 characters, got " "' }],
      },
    });
    expect(titles(shelf)).toEqual(['Attic']);
  });

  it('deletes, and puts back exactly what was there', () => {
    const { shelf, store } = newShelf();
    const { id } = written(shelf, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    const removed = valueOf(shelf.remove(id));
    expect(shelf.read(id)).toEqual(storageError('gone'));
    expect(shelf.list()).toEqual(done([]));
    expect(shelf.remove(id)).toEqual(storageError('gone'));
    expect(shelf.restore(removed)).toEqual(done(id));
    expect(store.everything).toEqual(before);
  });

  it('remembers which project was open', () => {
    const { shelf } = newShelf();
    expect(shelf.lastOpened()).toEqual(done(null));
    shelf.noteOpened('id7');
    expect(shelf.lastOpened()).toEqual(done('id7'));
  });

  it('makes ids that keys can hold and that do not repeat', () => {
    const ids = Array.from({ length: 1000 }, randomId);
    expect(new Set(ids).size).toBe(1000);
    for (const id of ids) expect(id).toMatch(/^[a-z0-9]{20}$/);
  });

  it('gives back the last of any sequence of writes', () => {
    const heights = fc.array(fc.integer({ min: 900, max: 1400 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(heights, (values) => {
        const { shelf, store } = newShelf();
        const { id } = written(shelf, sound(), ...values.map((value) => sound({ [EAR]: value })));
        expect(valueOf(shelf.read(id)).content).toEqual(sound({ [EAR]: values.at(-1) }));
        expect(Object.keys(store.everything)).toHaveLength(2);
      }),
      { numRuns: runs(30) },
    );
  });
});

describe('a copy that is torn or changed', () => {
  const damages: readonly (readonly [string, (text: string) => string])[] = [
    ['cut short', (text) => text.slice(0, text.length / 2)],
    ['emptied', () => ''],
    ['changed in one digit', (text) => text.replace('1200', '1201')],
    ['something else', () => '{"earHeight":1200}'],
    ['without a checksum', (text) => text.replace(/^1 \S+ /, '1 ')],
  ];

  it.each(damages)('falls back to the one before when it is %s, and says so', (_, damage) => {
    const { shelf, store } = newShelf();
    const { id } = written(shelf, sound({ [EAR]: 1100 }), sound({ [EAR]: 1200 }));
    const newest = keyOf(id, 1);
    expect(store.getItem(newest)).toContain('1200');
    store.setItem(newest, damage(store.getItem(newest) ?? ''));
    const opened = valueOf(shelf.read(id));
    expect(opened).toMatchObject({ recovered: true, content: sound({ [EAR]: 1100 }) });
    const kept = valueOf(shelf.write(id, sound({ [EAR]: 1300 }), opened.stamp));
    expect(shelf.read(id)).toEqual(done({ ...kept, recovered: false, content: sound({ [EAR]: 1300 }) }));
  });

  it('is reported where both are damaged, and stays to be saved or deleted', () => {
    const { shelf, store } = newShelf();
    const { id } = written(shelf, sound(), sound({ [EAR]: 1200 }));
    store.setItem(keyOf(id, 0), 'a');
    store.setItem(keyOf(id, 1), 'bc');
    expect(shelf.read(id)).toEqual(storageError('damaged'));
    expect(shelf.list()).toEqual(done([{ kind: 'unreadable', id, size: 'abc'.length, error: { kind: 'damaged' } }]));
    expect(shelf.write(id, sound(), '2-00000000')).toEqual(storageError('damaged'));
    expect(shelf.duplicate(id)).toEqual(storageError('damaged'));
    expect(shelf.texts(id)).toEqual(done(['a', 'bc']));
    const removed = valueOf(shelf.remove(id));
    valueOf(shelf.restore(removed));
    expect(shelf.texts(id)).toEqual(done(['a', 'bc']));
  });

  it('is never taken for a whole one, wherever it was torn', () => {
    fc.assert(
      fc.property(fc.nat(), (at) => {
        const { shelf, store } = newShelf();
        const { id } = written(shelf, sound({ [EAR]: 1100 }), sound({ [EAR]: 1200 }));
        const text = store.getItem(keyOf(id, 1)) ?? '';
        store.setItem(keyOf(id, 1), text.slice(0, at % text.length));
        expect(valueOf(shelf.read(id)).content).toEqual(sound({ [EAR]: 1100 }));
      }),
      { numRuns: runs(50) },
    );
  });

  it('of a newer version is neither opened nor written over', () => {
    const { shelf, store } = newShelf();
    const kept = written(shelf, sound(), sound({ [EAR]: 1200 }));
    store.setItem(keyOf(kept.id, 0), '2 anything at all');
    const before = store.everything;
    expect(shelf.read(kept.id)).toEqual(storageError('newer'));
    expect(shelf.write(kept.id, sound(), kept.stamp)).toEqual(storageError('newer'));
    expect(store.everything).toEqual(before);
  });

  it('that is whole but holds no sound project gives the faults', () => {
    const { shelf, store } = newShelf();
    const id = 'later';
    const body = { revision: 1, saved: 0, title: 'Attic', project: demoWith({ '/version': 3 }) };
    store.setItem(keyOf(id, 0), writeSlot(body));
    expect(shelf.read(id)).toEqual({
      ok: false,
      error: {
        kind: 'unsound',
        faults: [{ pointer: '/version', message: 'expected 2 or lower, got 3: a newer Wedgewright wrote this file' }],
      },
    });
  });
});

describe('a store in error', () => {
  const everyUse = (shelf: Shelf, id: string): StorageResult<unknown>[] => [
    shelf.list(),
    shelf.read(id),
    shelf.add(sound()),
    shelf.addCopy(sound()),
    shelf.write(id, sound(), '1-00000000'),
    shelf.duplicate(id),
    shelf.rename(id, 'Attic'),
    shelf.remove(id),
    shelf.restore({ id, texts: [[0, 'x']] }),
    shelf.texts(id),
    shelf.lastOpened(),
    shelf.noteOpened(id),
    keepMine(shelf, id, sound()),
    takeTheirs(shelf, id, sound()),
  ];

  it('that is not there or may not be used is said so by every use', () => {
    const { shelf, store } = newShelf();
    const { id } = written(shelf, sound());
    store.forbidden = true;
    for (const outcome of everyUse(shelf, id)) expect(outcome).toEqual(storageError('forbidden'));
    for (const outcome of everyUse(new Shelf(null), id)) expect(outcome).toEqual(storageError('forbidden'));
  });

  it('that is full says so and keeps what it has', () => {
    const { shelf, store } = newShelf();
    const kept = written(shelf, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    store.room = store.used;
    expect(shelf.add(sound())).toEqual(storageError('full'));
    expect(shelf.write(kept.id, sound({ '/title': 'A much longer title' }), kept.stamp)).toEqual(storageError('full'));
    expect(store.everything).toEqual(before);
    expect(valueOf(shelf.read(kept.id)).content).toEqual(sound({ [EAR]: 1200 }));
  });

  it('that is full when a deletion is undone leaves no half, and the undo can be tried again', () => {
    const { shelf, store } = newShelf();
    const { id } = written(shelf, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    const removed = valueOf(shelf.remove(id));
    store.room = 3000;
    expect(shelf.restore(removed)).toEqual(storageError('full'));
    expect(store.everything).toEqual({});
    store.room = Infinity;
    expect(shelf.restore(removed)).toEqual(done(id));
    expect(store.everything).toEqual(before);
  });

  it('that drops what it is given is found out', () => {
    const { shelf, store } = newShelf();
    const kept = written(shelf, sound());
    store.forgetful = true;
    expect(shelf.write(kept.id, sound({ [EAR]: 1200 }), kept.stamp)).toEqual(storageError('unkept'));
    expect(shelf.add(sound())).toEqual(storageError('unkept'));
  });

  it('has the browser’s own store behind it, or none where asking throws', () => {
    const own = Object.getOwnPropertyDescriptor(globalThis, 'localStorage');
    const provide = (get: () => unknown): void => {
      Object.defineProperty(globalThis, 'localStorage', { configurable: true, get });
    };
    try {
      const store = new FakeStore();
      provide(() => store);
      expect(browserStore()).toBe(store);
      provide(() => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      });
      expect(browserStore()).toBeNull();
      provide(() => undefined);
      expect(browserStore()).toBeNull();
    } finally {
      if (own) Object.defineProperty(globalThis, 'localStorage', own);
      else Reflect.deleteProperty(globalThis, 'localStorage');
    }
  });

  it('knows an older name of a full store', () => {
    expect(
      attempt(new FakeStore(), () => {
        throw new DOMException('full', 'NS_ERROR_DOM_QUOTA_REACHED');
      }),
    ).toEqual(storageError('full'));
  });

  it.each<[StorageError, RegExp]>([
    [{ kind: 'forbidden' }, /^This browser keeps nothing for this page\. Save the project as a file/],
    [{ kind: 'full' }, /^The browser has no room left\. Save the project as a file, or delete/],
    [{ kind: 'unkept' }, /did not keep what it was given\. Save the project as a file/],
    [{ kind: 'gone' }, /no longer kept in the browser/],
    [{ kind: 'damaged' }, /^No copy of this project/],
    [{ kind: 'newer' }, /Reload the page/],
    [{ kind: 'unsound', faults: [{ pointer: '/title', message: 'expected x' }] }, /opened: \/title: expected x$/],
    [{ kind: 'conflict' }, /^Another tab has changed this project\. Keep yours or take theirs/],
  ])('has words for %j', (of, words) => {
    expect(storageErrorText(of)).toMatch(words);
  });
});

describe('two tabs with one project', () => {
  function twoTabs() {
    const { shelf: mine, store } = newShelf();
    const theirs = new Shelf(store, () => 'theirs');
    const start = written(mine, sound());
    const ahead = valueOf(theirs.write(start.id, sound({ [EAR]: 1200 }), start.stamp));
    return { mine, theirs, start, ahead, content: sound({ [EAR]: 1300 }) };
  }

  it('do not write over each other', () => {
    const { mine, start, content } = twoTabs();
    expect(mine.write(start.id, content, start.stamp)).toEqual(storageError('conflict'));
    expect(valueOf(mine.read(start.id)).content).toEqual(sound({ [EAR]: 1200 }));
  });

  it('keep mine, and theirs is a copy', () => {
    const { mine, start, content } = twoTabs();
    const { value, copy } = valueOf(keepMine(mine, start.id, content));
    expect(valueOf(mine.read(start.id))).toMatchObject({ content, stamp: value.stamp });
    expect(valueOf(mine.read(copy?.id ?? '')).content.project).toEqual(
      project({ [EAR]: 1200, '/title': 'Bindery desk 2' }),
    );
  });

  it('take theirs, and mine is a copy', () => {
    const { mine, start, ahead, content } = twoTabs();
    const { value, copy } = valueOf(takeTheirs(mine, start.id, content));
    expect(value).toMatchObject({ stamp: ahead.stamp, content: sound({ [EAR]: 1200 }) });
    expect(valueOf(mine.read(copy?.id ?? '')).content.project).toEqual(
      project({ [EAR]: 1300, '/title': 'Bindery desk 2' }),
    );
  });

  it('make no copy when both hold the same', () => {
    const { mine, start, ahead } = twoTabs();
    const same = sound({ [EAR]: 1200 });
    expect(valueOf(keepMine(mine, start.id, same))).toMatchObject({ value: { stamp: ahead.stamp }, copy: null });
    expect(valueOf(takeTheirs(mine, start.id, same))).toMatchObject({ value: { stamp: ahead.stamp }, copy: null });
    expect(titles(mine)).toHaveLength(1);
  });

  it('keep mine as a new entry when theirs was deleted', () => {
    const { mine, theirs, start, content } = twoTabs();
    theirs.remove(start.id);
    expect(mine.write(start.id, content, start.stamp)).toEqual(storageError('gone'));
    expect(takeTheirs(mine, start.id, content)).toEqual(storageError('gone'));
    const { value, copy } = valueOf(keepMine(mine, start.id, content));
    expect(copy).toBeNull();
    expect(valueOf(mine.read(value.id)).content).toEqual(content);
  });

  it('change nothing where there is no room for the copy', () => {
    const { store, shelf } = newShelf();
    const start = written(shelf, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    store.room = store.used;
    expect(keepMine(shelf, start.id, sound({ [EAR]: 1300 }))).toEqual(storageError('full'));
    expect(takeTheirs(shelf, start.id, sound({ [EAR]: 1300 }))).toEqual(storageError('full'));
    expect(store.everything).toEqual(before);
  });
});
