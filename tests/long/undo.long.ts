import { expect, test } from 'vitest';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { seeded } from '../../bench/measure.ts';
import { project } from '../projects.ts';

const EDITS = 1000;
/** The seed of the edits. */
const SEED = 3;

test(`${EDITS} edits are undone and done again one by one (seed ${SEED})`, () => {
  const random = seeded(SEED);
  const open = new OpenProject(project());
  const undo = new Undo(open);
  const drafts = [open.draft];
  for (let edit = 0; edit < EDITS; edit++) {
    const value = edit % 7 === 3 ? 'tall' : Math.round(1000 + 300 * random()) + edit / 1e4;
    undo.begin();
    open.edit('/layouts/0/listener/earHeight', value);
    undo.finish();
    drafts.push(open.draft);
  }
  let back = 0;
  while (undo.undoLabel !== null) {
    undo.undo();
    back += 1;
    expect(open.draft).toEqual(drafts[EDITS - back]);
  }
  expect(back).toBeGreaterThan(0);
  for (; undo.redoLabel !== null; back--) {
    undo.redo();
    expect(open.draft).toEqual(drafts[EDITS - back + 1]);
  }
  expect(back).toBe(0);
  expect(open.draft).toEqual(drafts[EDITS]);
});
