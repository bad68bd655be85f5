import { describe, expect, it } from 'vitest';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { project } from '../projects.ts';

const EAR = '/layouts/0/listener/earHeight';

/** All of whose values are the user's own already: typing one again changes nothing. */
const own = project({ '/layouts/0/entered': undefined });

function opened(of = project()) {
  const open = new OpenProject(of);
  const undo = new Undo(open);
  /** As the page does: the history follows every edit. */
  const edit = (pointer: string, value: unknown): void => {
    open.edit(pointer, value);
    undo.follow();
  };
  return { open, undo, edit };
}

describe('undo of an open project', () => {
  it('takes edits back and brings them again, and says which', () => {
    const { open, undo, edit } = opened();
    edit(EAR, 1200);
    edit('/layouts/0/desk/outline/width', 1500);
    expect([undo.undoLabel, undo.redoLabel]).toEqual(['Desk, width', null]);
    expect(undo.undo()).toEqual({ message: 'Undone: Desk, width', pointer: '/layouts/0/desk/outline/width' });
    expect(undo.undo()).toEqual({ message: 'Undone: Listener, ear height', pointer: EAR });
    expect(open.draft).toEqual(project());
    expect(open.shown?.layout.listener.earHeight).toBe(1180);
    expect(undo.undo()).toBeNull();
    expect(undo.redo()).toEqual({ message: 'Redone: Listener, ear height', pointer: EAR });
    expect(open.at(EAR)).toBe(1200);
    edit(EAR, 1190);
    expect(undo.redo()).toBeNull();
  });

  it('makes one step of a gesture', () => {
    const { open, undo, edit } = opened();
    undo.begin();
    for (const value of [1, 12, 119, 1190]) edit(EAR, value);
    undo.finish();
    expect(undo.undoLabel).toBe('Listener, ear height');
    undo.undo();
    expect(open.at(EAR)).toBe(1180);
    expect(undo.undoLabel).toBeNull();
  });

  it('leaves nothing of a gesture that is cancelled', () => {
    const { open, undo, edit } = opened();
    edit(EAR, 1200);
    undo.undo();
    undo.begin();
    edit(EAR, 5);
    expect(open.faults).not.toEqual([]);
    undo.cancel();
    expect(open.draft).toEqual(project());
    expect(open.faults).toEqual([]);
    expect([undo.undoLabel, undo.redoLabel]).toEqual([null, 'Listener, ear height']);
  });

  it('makes no step of a drag that ends where it began, nor of the same value typed again', () => {
    const { undo, edit } = opened(own);
    undo.begin();
    edit(EAR, 1190);
    edit(EAR, 1180);
    undo.finish();
    edit(EAR, 1180);
    expect(undo.undoLabel).toBeNull();
  });

  it('undoes a drag that is still going on', () => {
    const { open, undo, edit } = opened();
    undo.begin();
    edit(EAR, 1190);
    expect(undo.undoLabel).toBe('this edit');
    expect(undo.undo()?.message).toBe('Undone: Listener, ear height');
    expect(open.at(EAR)).toBe(1180);
    undo.redo();
    expect(open.at(EAR)).toBe(1190);
  });

  it('takes up an edit that nobody told it of', () => {
    const { open, undo } = opened();
    open.edit(EAR, 1200);
    expect(undo.undo()?.pointer).toBe(EAR);
    expect(open.at(EAR)).toBe(1180);
  });

  it('takes both marks back when they are tied', () => {
    const { open, undo, edit } = opened();
    edit('/layouts/0/placement/right/x', 400);
    expect(open.at('/layouts/0/placement/left/x')).toBe(-400);
    expect(undo.undo()?.message).toBe('Undone: Placement');
    expect(open.draft).toEqual(project());
  });

  it('forgets its steps with another project', () => {
    const { open, undo, edit } = opened();
    edit(EAR, 1200);
    open.replace(project({ '/title': 'Attic' }));
    undo.restart();
    expect(undo.undo()).toBeNull();
    expect(open.project.title).toBe('Attic');
  });
});
