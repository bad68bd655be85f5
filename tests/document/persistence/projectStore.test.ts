import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Project } from '$lib/project/project.ts';
import { keepMine, takeTheirs } from '$lib/document/persistence/conflict.ts';
import { keyOf } from '$lib/document/persistence/copies.ts';
import { randomId, ProjectStore, type Content, type Kept } from '$lib/document/persistence/projectStore.ts';
import { writeSnapshot } from '$lib/document/persistence/snapshot.ts';
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

function newStore(store: FakeStore = new FakeStore()) {
  let ids = 0;
  let time = 1000;
  const projects = new ProjectStore(
    store,
    () => `id${(ids += 1)}`,
    () => (time += 1),
  );
  return { store, projects };
}

function valueOf<Value>(outcome: StorageResult<Value>): Value {
  if (!outcome.ok) throw new Error(storageErrorText(outcome.error));
  return outcome.value;
}

/** Writes the contents one after the other, each based on the one before. */
function written(projects: ProjectStore, first: Content, ...more: readonly Content[]): Kept {
  return more.reduce(
    (kept, content) => valueOf(projects.write(kept.id, content, kept.stamp)),
    valueOf(projects.add(first)),
  );
}

const titles = (projects: ProjectStore): string[] =>
  valueOf(projects.list()).map((entry) => (entry.kind === 'whole' ? entry.title : DAMAGED));

describe('a projects of projects', () => {
  it('keeps a project and gives it back', () => {
    const { projects } = newStore();
    const kept = written(projects, sound(), sound({ [EAR]: 1200 }));
    expect(projects.read(kept.id)).toEqual(done({ ...kept, recovered: false, content: sound({ [EAR]: 1200 }) }));
  });

  it('keeps what was typed before it makes sense', () => {
    const { projects } = newStore();
    const content = { project: project(), draft: demoWith({ [EAR]: 'twelve' }) };
    expect(valueOf(projects.read(written(projects, content).id)).content).toEqual(content);
  });

  it('lists projects with the last changed first, and says their size', () => {
    const { projects, store } = newStore();
    const attic = written(projects, sound({ '/title': 'Attic' }));
    written(projects, sound({ '/title': 'Cellar' }));
    const rewritten = valueOf(projects.write(attic.id, sound({ '/title': 'Attic' }), attic.stamp));
    const list = valueOf(projects.list());
    expect(titles(projects)).toEqual(['Attic', 'Cellar']);
    expect(list[0]).toMatchObject({ kind: 'whole', id: attic.id, saved: rewritten.saved });
    const texts = Object.entries(store.everything).filter(([key]) => key.includes(attic.id));
    expect(list[0]?.size).toBe(texts.reduce((sum, [, text]) => sum + text.length, 0));
  });

  it('takes no notice of what else is in the store', () => {
    const { projects, store } = newStore();
    store.setItem('theme', 'dark');
    store.setItem('wedgewright/open', 'id1');
    store.setItem('wedgewright/shelf/', 'x');
    expect(projects.list()).toEqual(done([]));
  });

  it('gives each copy a title of its own', () => {
    const { projects } = newStore();
    const { id } = written(projects, sound({ '/title': 'Attic' }));
    const copy = valueOf(projects.duplicate(id));
    valueOf(projects.addCopy(sound({ '/title': 'Attic' })));
    valueOf(projects.addCopy(sound({ '/title': 'Cellar' })));
    expect(titles(projects)).toEqual(['Cellar', 'Attic 3', 'Attic 2', 'Attic']);
    const { project: copied, draft } = valueOf(projects.read(copy.id)).content;
    expect(copied).toEqual(project({ '/title': 'Attic 2' }));
    expect(draft).toEqual(copied);
  });

  it('renames, and refuses what is no title', () => {
    const { projects } = newStore();
    const { id } = written(projects, sound());
    valueOf(projects.rename(id, 'Attic'));
    expect(titles(projects)).toEqual(['Attic']);
    expect(valueOf(projects.read(id)).content.project).toEqual(project({ '/title': 'Attic' }));
    expect(projects.rename(id, ' ')).toEqual({
      ok: false,
      error: {
        kind: 'unsound',
        faults: [{ pointer: '/title', message: 'expected one line of 1 to 200 characters, got " "' }],
      },
    });
    expect(titles(projects)).toEqual(['Attic']);
  });

  it('deletes, and puts back exactly what was there', () => {
    const { projects, store } = newStore();
    const { id } = written(projects, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    const removed = valueOf(projects.remove(id));
    expect(projects.read(id)).toEqual(storageError('gone'));
    expect(projects.list()).toEqual(done([]));
    expect(projects.remove(id)).toEqual(storageError('gone'));
    expect(projects.restore(removed)).toEqual(done(id));
    expect(store.everything).toEqual(before);
  });

  it('remembers which project was open', () => {
    const { projects } = newStore();
    expect(projects.lastOpened()).toEqual(done(null));
    projects.noteOpened('id7');
    expect(projects.lastOpened()).toEqual(done('id7'));
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
        const { projects, store } = newStore();
        const { id } = written(projects, sound(), ...values.map((value) => sound({ [EAR]: value })));
        expect(valueOf(projects.read(id)).content).toEqual(sound({ [EAR]: values.at(-1) }));
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
    const { projects, store } = newStore();
    const { id } = written(projects, sound({ [EAR]: 1100 }), sound({ [EAR]: 1200 }));
    const newest = keyOf(id, 1);
    expect(store.getItem(newest)).toContain('1200');
    store.setItem(newest, damage(store.getItem(newest) ?? ''));
    const opened = valueOf(projects.read(id));
    expect(opened).toMatchObject({ recovered: true, content: sound({ [EAR]: 1100 }) });
    const kept = valueOf(projects.write(id, sound({ [EAR]: 1300 }), opened.stamp));
    expect(projects.read(id)).toEqual(done({ ...kept, recovered: false, content: sound({ [EAR]: 1300 }) }));
  });

  it('is reported where both are damaged, and stays to be saved or deleted', () => {
    const { projects, store } = newStore();
    const { id } = written(projects, sound(), sound({ [EAR]: 1200 }));
    store.setItem(keyOf(id, 0), 'a');
    store.setItem(keyOf(id, 1), 'bc');
    expect(projects.read(id)).toEqual(storageError('damaged'));
    expect(projects.list()).toEqual(done([{ kind: 'unreadable', id, size: 'abc'.length, error: { kind: 'damaged' } }]));
    expect(projects.write(id, sound(), '2-00000000')).toEqual(storageError('damaged'));
    expect(projects.duplicate(id)).toEqual(storageError('damaged'));
    expect(projects.texts(id)).toEqual(done(['a', 'bc']));
    const removed = valueOf(projects.remove(id));
    valueOf(projects.restore(removed));
    expect(projects.texts(id)).toEqual(done(['a', 'bc']));
  });

  it('is never taken for a whole one, wherever it was torn', () => {
    fc.assert(
      fc.property(fc.nat(), (at) => {
        const { projects, store } = newStore();
        const { id } = written(projects, sound({ [EAR]: 1100 }), sound({ [EAR]: 1200 }));
        const text = store.getItem(keyOf(id, 1)) ?? '';
        store.setItem(keyOf(id, 1), text.slice(0, at % text.length));
        expect(valueOf(projects.read(id)).content).toEqual(sound({ [EAR]: 1100 }));
      }),
      { numRuns: runs(50) },
    );
  });

  it('of a newer version is neither opened nor written over', () => {
    const { projects, store } = newStore();
    const kept = written(projects, sound(), sound({ [EAR]: 1200 }));
    store.setItem(keyOf(kept.id, 0), '2 anything at all');
    const before = store.everything;
    expect(projects.read(kept.id)).toEqual(storageError('newer'));
    expect(projects.write(kept.id, sound(), kept.stamp)).toEqual(storageError('newer'));
    expect(store.everything).toEqual(before);
  });

  it('that is whole but holds no sound project gives the faults', () => {
    const { projects, store } = newStore();
    const id = 'later';
    const body = { revision: 1, saved: 0, title: 'Attic', project: demoWith({ '/version': 3 }) };
    store.setItem(keyOf(id, 0), writeSnapshot(body));
    expect(projects.read(id)).toEqual({
      ok: false,
      error: {
        kind: 'unsound',
        faults: [{ pointer: '/version', message: 'expected 2 or lower, got 3: a newer Wedgewright wrote this file' }],
      },
    });
  });
});

describe('a store in error', () => {
  const everyUse = (projects: ProjectStore, id: string): StorageResult<unknown>[] => [
    projects.list(),
    projects.read(id),
    projects.add(sound()),
    projects.addCopy(sound()),
    projects.write(id, sound(), '1-00000000'),
    projects.duplicate(id),
    projects.rename(id, 'Attic'),
    projects.remove(id),
    projects.restore({ id, texts: [[0, 'x']] }),
    projects.texts(id),
    projects.lastOpened(),
    projects.noteOpened(id),
    keepMine(projects, id, sound()),
    takeTheirs(projects, id, sound()),
  ];

  it('that is not there or may not be used is said so by every use', () => {
    const { projects, store } = newStore();
    const { id } = written(projects, sound());
    store.forbidden = true;
    for (const outcome of everyUse(projects, id)) expect(outcome).toEqual(storageError('forbidden'));
    for (const outcome of everyUse(new ProjectStore(null), id)) expect(outcome).toEqual(storageError('forbidden'));
  });

  it('that is full says so and keeps what it has', () => {
    const { projects, store } = newStore();
    const kept = written(projects, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    store.room = store.used;
    expect(projects.add(sound())).toEqual(storageError('full'));
    expect(projects.write(kept.id, sound({ '/title': 'A much longer title' }), kept.stamp)).toEqual(
      storageError('full'),
    );
    expect(store.everything).toEqual(before);
    expect(valueOf(projects.read(kept.id)).content).toEqual(sound({ [EAR]: 1200 }));
  });

  it('that is full when a deletion is undone leaves no half, and the undo can be tried again', () => {
    const { projects, store } = newStore();
    const { id } = written(projects, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    const removed = valueOf(projects.remove(id));
    store.room = 3000;
    expect(projects.restore(removed)).toEqual(storageError('full'));
    expect(store.everything).toEqual({});
    store.room = Infinity;
    expect(projects.restore(removed)).toEqual(done(id));
    expect(store.everything).toEqual(before);
  });

  it('that drops what it is given is found out', () => {
    const { projects, store } = newStore();
    const kept = written(projects, sound());
    store.forgetful = true;
    expect(projects.write(kept.id, sound({ [EAR]: 1200 }), kept.stamp)).toEqual(storageError('unkept'));
    expect(projects.add(sound())).toEqual(storageError('unkept'));
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
    const { projects: mine, store } = newStore();
    const theirs = new ProjectStore(store, () => 'theirs');
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
    const { store, projects } = newStore();
    const start = written(projects, sound(), sound({ [EAR]: 1200 }));
    const before = store.everything;
    store.room = store.used;
    expect(keepMine(projects, start.id, sound({ [EAR]: 1300 }))).toEqual(storageError('full'));
    expect(takeTheirs(projects, start.id, sound({ [EAR]: 1300 }))).toEqual(storageError('full'));
    expect(store.everything).toEqual(before);
  });
});
