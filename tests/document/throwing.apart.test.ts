import { describe, expect, test, vi } from 'vitest';
import type * as builds from '$lib/stand/build.ts';
import { Persistence } from '$lib/document/persistence/persistence.svelte.ts';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { settle, settleProject } from '$lib/document/settle.ts';
import { ProjectStore } from '$lib/document/persistence/projectStore.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { demoWith, project } from '../projects.ts';
import { FakeStore } from './persistence/store.ts';

const LIFT = '/layouts/0/stand/lift';
const BROKEN = 150;

/** A build that throws for one lift and works for every other, as a mistake in it would have it. */
vi.mock('$lib/stand/build.ts', async (original) => {
  const real = await original<typeof builds>();
  return {
    ...real,
    buildStand(...given: Parameters<typeof real.buildStand>) {
      if (given[2].lift === BROKEN) throw new Error('wood was left over');
      return real.buildStand(...given);
    },
  };
});

const told = [{ pointer: '/layouts/0/stand/build', message: expect.stringMatching(/wood was left over.*is kept/) }];

/** A page's state round one project, in a store of its own. */
function page(projects = new ProjectStore(new FakeStore())) {
  const open = new OpenProject(project());
  const undo = new Undo(open);
  const persistence = new Persistence(open, undo, projects, null);
  const edit = (value: unknown): void => {
    open.edit(LIFT, value);
    undo.follow();
    persistence.follow();
  };
  return { open, undo, persistence, projects, edit };
}

describe('a plan that throws', () => {
  test('costs no edit: it is in the document, an undo away, saved, and told as a fault', () => {
    const { open, undo, persistence, projects, edit } = page();
    const before = open.shown;
    edit(BROKEN);
    expect(open.at(LIFT)).toBe(BROKEN);
    expect(open.faults).toEqual(told);
    // What is drawn stays the last answer, and is known not to be what is typed.
    expect(open.shown).toBe(before);
    expect(open.shown?.project).not.toBe(open.project);
    persistence.flush();
    expect(persistence.status.kind).toBe('saved');
    const kept = projects.read(persistence.id ?? '');
    expect(kept.ok && kept.value.content.draft).toEqual(project({ [LIFT]: BROKEN }));

    expect(undo.undoLabel).toMatch(/lift/i);
    undo.undo();
    expect([open.at(LIFT), open.faults]).toEqual([12, []]);
    undo.redo();
    expect([open.at(LIFT), open.faults.length]).toEqual([BROKEN, 1]);
    edit(60);
    expect([open.faults, open.shown?.project]).toEqual([[], open.project]);
  });

  test('is told just the same when the project is opened again', () => {
    const { projects, persistence, edit } = page();
    edit(BROKEN);
    persistence.flush();
    const again = page(projects);
    expect(again.persistence.resume()).toMatchObject({ ok: true });
    expect(again.open.at(LIFT)).toBe(BROKEN);
    // The drawing is the last that had an answer, as before.
    expect([again.open.shown?.project, again.open.sound]).toEqual([project(), true]);
    expect(again.open.faults).toEqual(told);
  });

  test('is told when it was the first that was asked for', () => {
    expect(settleProject(project({ [LIFT]: BROKEN }), 0)).toMatchObject({ shown: null, faults: told });
  });
});

test('a check that throws costs no edit either', () => {
  const start = settleProject(project(), 0);
  const draft = demoWith({ [LIFT]: 60 });
  const settled = settle(draft, 0, start, () => {
    throw new RangeError('too deep');
  });
  expect(settled).toMatchObject({ draft, project: start.project, sound: false, shown: start.shown });
  expect(settled.faults[0]?.message).toContain('too deep');
});
