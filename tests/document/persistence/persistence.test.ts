import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Persistence } from '$lib/document/persistence/persistence.svelte.ts';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { ProjectStore } from '$lib/document/persistence/projectStore.ts';
import { storageError, storageErrorText, type StorageResult } from '$lib/document/persistence/storageError.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { project } from '../../projects.ts';
import { FakeStore } from './store.ts';
import { TabLine } from './tabLine.ts';

const EAR = '/layouts/0/listener/earHeight';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A browser with tabs that share a store and a line. */
function browser() {
  const store = new FakeStore();
  const line = new TabLine();
  let tabs = 0;
  let ids = 0;
  const tab = () => {
    tabs += 1;
    const open = new OpenProject(project());
    const undo = new Undo(open);
    const projects = new ProjectStore(store, () => `id${(ids += 1)}`);
    const persistence = new Persistence(open, undo, projects, line.join(), `tab${tabs}`);
    const edit = (value: unknown, pointer = EAR): void => {
      open.edit(pointer, value);
      undo.follow();
      persistence.follow();
    };
    const ear = (): unknown => open.at(EAR);
    return { open, undo, projects, persistence, edit, ear };
  };
  return { store, tab };
}

function valueOf<Value>(outcome: StorageResult<Value> | null): Value {
  if (outcome === null) throw new Error('expected an outcome');
  if (!outcome.ok) throw new Error(storageErrorText(outcome.error));
  return outcome.value;
}

const soon = (): void => void vi.advanceTimersByTime(1000);

const ears = (projects: ProjectStore): unknown[] =>
  valueOf(projects.list()).map(({ id }) => valueOf(projects.read(id)).content.project.layouts[0]?.listener.earHeight);

const titles = (projects: ProjectStore): unknown[] =>
  valueOf(projects.list()).map((entry) => (entry.kind === 'whole' ? entry.title : entry.kind));

describe('an open project that is kept', () => {
  it('leaves the example alone until it is changed', () => {
    const { store, tab } = browser();
    const { persistence } = tab();
    expect(persistence.resume()).toBeNull();
    persistence.flush();
    soon();
    expect(store.everything).toEqual({});
    expect([persistence.id, persistence.status.kind]).toEqual([null, 'untouched']);
  });

  it('is there again on the next visit, with what was half typed', () => {
    const { tab } = browser();
    const first = tab();
    first.edit(1200);
    first.edit('twel');
    expect(first.persistence.status.kind).toBe('saving');
    soon();
    expect(first.persistence.status.kind).toBe('saved');
    const second = tab();
    expect(valueOf(second.persistence.resume()).recovered).toBe(false);
    expect(second.ear()).toBe('twel');
    expect(second.open.project.layouts[0]?.listener.earHeight).toBe(1200);
    expect(second.persistence.id).toBe(first.persistence.id);
    second.persistence.flush();
    expect(second.persistence.news.kind).toBe('shared');
  });

  it('shows on the next visit the drawing that it had last, when what was typed has no answer', () => {
    const { tab } = browser();
    const first = tab();
    first.edit(1200);
    first.edit(-100, '/layouts/0/listener/setback');
    const shown = first.open.shown?.project.layouts[0]?.listener.setback;
    // Sound, and no loudspeaker can be tilted so far.
    first.edit(2400);
    expect(first.open.sound).toBe(true);
    expect(first.open.faults.length).toBeGreaterThan(0);
    for (const typed of [2400, 'twel']) {
      if (typed !== 2400) first.edit(typed);
      soon();
      const next = tab();
      expect(valueOf(next.persistence.resume()).recovered).toBe(false);
      expect(next.ear()).toBe(typed);
      expect(next.open.project.layouts[0]?.listener.earHeight).toBe(2400);
      expect(next.open.shown?.project.layouts[0]?.listener).toMatchObject({ earHeight: 1200, setback: shown });
      expect(next.open.faults.length).toBeGreaterThan(0);
    }
  });

  it('is saved when the page is hidden, and lets nothing be lost when it is left', () => {
    const { store, tab } = browser();
    const { persistence, edit } = tab();
    const page = Object.assign(new EventTarget(), { visibilityState: 'hidden' });
    const frame = new EventTarget();
    const detach = persistence.attach(page, frame);
    edit(1200);
    page.dispatchEvent(new Event('visibilitychange'));
    expect(persistence.status.kind).toBe('saved');
    const leave = (): boolean => frame.dispatchEvent(new Event('beforeunload', { cancelable: true }));
    expect(leave()).toBe(true);
    store.forbidden = true;
    edit(1210);
    expect(leave()).toBe(false);
    expect(persistence.status).toEqual({ kind: 'failed', error: { kind: 'forbidden' } });
    detach();
    expect(leave()).toBe(true);
  });

  it('gives way to another one only after it is saved, and each has a history of its own', () => {
    const { tab } = browser();
    const { persistence, projects, undo, edit, ear } = tab();
    edit(1200);
    persistence.flush();
    const first = persistence.id ?? '';
    const copy = valueOf(projects.duplicate(first));
    edit(1210);
    valueOf(persistence.openEntry(copy.id));
    expect(ear()).toBe(1200);
    expect(undo.undoLabel).toBeNull();
    valueOf(persistence.openEntry(first));
    expect(ear()).toBe(1210);
  });

  it('stays when another one cannot be read, or when it cannot be saved', () => {
    const { store, tab } = browser();
    const { persistence, projects, edit, ear } = tab();
    edit(1200);
    persistence.flush();
    const copy = valueOf(projects.duplicate(persistence.id ?? ''));
    expect(persistence.openEntry('nowhere')).toEqual(storageError('gone'));
    expect(ear()).toBe(1200);
    store.room = store.used;
    edit(1210);
    expect(persistence.openEntry(copy.id)).toEqual(storageError('full'));
    expect(ear()).toBe(1210);
    store.room = Infinity;
    soon();
    edit(1215);
    soon();
    expect(persistence.status.kind).toBe('saved');
  });

  it('makes an entry of an import and keeps what was open', () => {
    const { tab } = browser();
    const { persistence, projects, open, edit } = tab();
    edit(1200);
    valueOf(persistence.take(project()));
    expect(open.project.title).toBe('Bindery desk 2');
    expect(titles(projects).toSorted()).toEqual(['Bindery desk', 'Bindery desk 2']);
    expect(ears(projects).toSorted()).toEqual([1180, 1200]);
  });

  it('opens an import also where nothing can be kept, and what was open is an undo away', () => {
    const { store, tab } = browser();
    const { persistence, undo, open, edit, ear } = tab();
    store.forbidden = true;
    edit(1200);
    expect(persistence.take(project({ '/title': 'Attic' }))).toEqual(storageError('forbidden'));
    expect(open.project.title).toBe('Attic');
    undo.undo();
    expect([open.project.title, ear()]).toEqual(['Bindery desk', 1200]);
    store.forbidden = false;
    persistence.flush();
    expect(persistence.status.kind).toBe('saved');
  });

  it('never writes an import over the entry that could not be saved', () => {
    const { store, tab } = browser();
    const { persistence, projects, edit } = tab();
    edit(1200);
    persistence.flush();
    const before = persistence.id;
    store.room = store.used;
    edit(1210);
    expect(persistence.take(project({ '/title': 'Attic' }))).toEqual(storageError('full'));
    store.room = Infinity;
    persistence.flush();
    expect(persistence.id).not.toBe(before);
    expect(titles(projects).toSorted()).toEqual(['Attic', 'Bindery desk']);
  });

  it('is in no store after its deletion until it is changed; the deletion can be undone', () => {
    const { tab } = browser();
    const { persistence, projects, edit, ear } = tab();
    edit(1200);
    persistence.flush();
    const id = persistence.id ?? '';
    edit(1210);
    const removed = valueOf(persistence.remove(id));
    soon();
    expect([persistence.id, persistence.status.kind, ear()]).toEqual([null, 'untouched', 1210]);
    expect(titles(projects)).toEqual([]);
    valueOf(projects.restore(removed));
    valueOf(persistence.openEntry(id));
    expect(ear()).toBe(1210);
  });
});

describe('a project in two tabs', () => {
  function both() {
    const { store, tab } = browser();
    const one = tab();
    one.edit(1200);
    one.persistence.flush();
    const two = tab();
    valueOf(two.persistence.resume());
    return { store, one, two };
  }

  it('is known to be in both', () => {
    const { one, two } = both();
    expect([one.persistence.news, two.persistence.news]).toEqual([
      { kind: 'shared', tabs: 1 },
      { kind: 'shared', tabs: 1 },
    ]);
  });

  it('tells the other of a change, and theirs is taken without a copy where mine has none of its own', () => {
    const { one, two } = both();
    two.edit(1210);
    soon();
    expect([one.persistence.news.kind, two.persistence.news.kind]).toEqual(['conflict', 'shared']);
    valueOf(one.persistence.takeTheirs());
    expect(one.ear()).toBe(1210);
    expect(one.persistence.news.kind).toBe('shared');
    expect(ears(one.projects)).toEqual([1210]);
  });

  it('does not lose mine when theirs is taken', () => {
    const { one, two } = both();
    one.edit(1220);
    two.edit(1210);
    two.persistence.flush();
    soon();
    expect(one.persistence.status).toEqual({ kind: 'failed', error: { kind: 'conflict' } });
    valueOf(one.persistence.takeTheirs());
    expect([one.ear(), one.persistence.status.kind]).toEqual([1210, 'saved']);
    expect(ears(one.projects).toSorted()).toEqual([1210, 1220]);
  });

  it('does not lose theirs when mine is kept', () => {
    const { one, two } = both();
    two.edit(1210);
    two.persistence.flush();
    one.edit(1220);
    soon();
    valueOf(one.persistence.keepMine());
    expect([one.ear(), one.persistence.status.kind, one.persistence.news.kind]).toEqual([1220, 'saved', 'shared']);
    expect(two.persistence.news.kind).toBe('conflict');
    expect(ears(one.projects).toSorted()).toEqual([1210, 1220]);
    one.edit(1230);
    soon();
    expect(one.persistence.status.kind).toBe('saved');
  });

  it('does not lose mine when another one is opened, or theirs was deleted', () => {
    const { one, two } = both();
    const copy = valueOf(one.projects.duplicate(one.persistence.id ?? ''));
    one.edit(1220);
    two.edit(1210);
    two.persistence.flush();
    valueOf(one.persistence.openEntry(copy.id));
    expect(ears(one.projects).toSorted()).toEqual([1200, 1210, 1220]);
    two.edit(1230);
    valueOf(one.projects.remove(two.persistence.id ?? ''));
    soon();
    expect(two.persistence.status).toEqual({ kind: 'failed', error: { kind: 'gone' } });
    valueOf(two.persistence.keepMine());
    expect(ears(one.projects).toSorted()).toEqual([1200, 1220, 1230]);
  });

  it('notices without an edit that its project was deleted, keeps it as a new entry, and takes it back when it is put back', () => {
    const { one, two } = both();
    const frame = new EventTarget();
    const detach = two.persistence.attach(
      Object.assign(new EventTarget(), { visibilityState: 'visible' as const }),
      frame,
    );
    const told = (): void => void frame.dispatchEvent(new Event('storage'));
    told();
    expect(two.persistence.status.kind).toBe('saved');
    const removed = valueOf(one.projects.remove(two.persistence.id ?? ''));
    told();
    expect(two.persistence.status).toEqual({ kind: 'failed', error: { kind: 'gone' } });
    // Something would be lost now: the browser has to ask.
    const leaving = new Event('beforeunload', { cancelable: true });
    frame.dispatchEvent(leaving);
    expect(leaving.defaultPrevented).toBe(true);

    valueOf(one.projects.restore(removed));
    told();
    expect([two.persistence.status.kind, ears(one.projects)]).toEqual(['saved', [1200]]);

    valueOf(one.projects.remove(two.persistence.id ?? ''));
    frame.dispatchEvent(new Event('focus'));
    valueOf(two.persistence.keepMine());
    expect([two.persistence.status.kind, ears(one.projects)]).toEqual(['saved', [1200]]);
    expect(two.persistence.id).not.toBe(removed.id);
    two.edit(1210);
    soon();
    expect(ears(one.projects)).toEqual([1210]);
    detach();
  });

  it('notices that all the browser kept was cleared', () => {
    const { store, tab } = browser();
    const { persistence, edit, projects } = tab();
    edit(1200);
    soon();
    store.clear();
    persistence.look();
    expect(persistence.status).toEqual({ kind: 'failed', error: { kind: 'gone' } });
    valueOf(persistence.keepMine());
    expect(ears(projects)).toEqual([1200]);
    // The next visit finds it.
    expect(valueOf(projects.lastOpened())).toBe(persistence.id);
  });

  it('makes one copy of mine, not two, when an import comes in between', () => {
    const { one, two } = both();
    one.edit(1220);
    two.edit(1210);
    two.persistence.flush();
    valueOf(one.persistence.take(project({ '/title': 'Attic' })));
    expect(titles(one.projects).toSorted()).toEqual(['Attic', 'Bindery desk', 'Bindery desk 2']);
    expect(ears(one.projects).toSorted()).toEqual([1180, 1210, 1220]);
  });
});
