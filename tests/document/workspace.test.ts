import { expect, test } from 'vitest';
import { failure, success } from '$lib/project/fault.ts';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { Workspace } from '$lib/document/workspace.svelte.ts';
import { project } from '../projects.ts';

function work() {
  const open = new OpenProject(project());
  const undo = new Undo(open);
  return { open, undo, workspace: new Workspace(open, undo) };
}
const EAR = '/layouts/0/listener/earHeight';

test('rearranges layouts as a step of its own and shows the one asked for; undo shows the one that comes back', () => {
  const { open, workspace } = work();
  open.edit(EAR, 1200);
  workspace.follow();
  const twice = workspace.arrange(([first]) => success(first ? [first, { ...first, name: 'second' }] : []), 1);
  workspace.follow();
  expect([twice.ok, open.layoutIndex, open.project.layouts.length]).toEqual([true, 1, 2]);
  workspace.undo();
  expect([open.layoutIndex, open.project.layouts.length, open.at(EAR)]).toEqual([0, 1, 1200]);
  expect(workspace.said).toMatch(/^Undone: /);
  workspace.undo();
  expect(open.at(EAR)).toBe(1180);
  workspace.undo();
  expect(open.at(EAR)).toBe(1180);
  workspace.redo();
  expect(open.at(EAR)).toBe(1200);
});

test('says why layouts cannot be rearranged, and leaves them', () => {
  const { open, workspace } = work();
  const before = open.draft;
  workspace.arrange(() => failure({ pointer: '/layouts', message: 'expected a free name' }), 0);
  expect(workspace.notice).toEqual({ text: 'expected a free name' });
  expect(open.draft).toBe(before);
  workspace.dismiss();
  expect(workspace.notice).toBeNull();
});

test('a file that is no project comes back with its faults, and what is open stays', async () => {
  const { open, workspace } = work();
  const before = open.draft;
  const read = await workspace.takeFile('{"format": "wedgewright/project", "version": 1}');
  expect(read.ok).toBe(false);
  expect(open.draft).toBe(before);
});

test('a file that is one is opened in place of what was there, before anything is kept', async () => {
  const { open, workspace } = work();
  const read = await workspace.takeFile(JSON.stringify(project({ '/title': 'From a file' })));
  expect(read.ok).toBe(true);
  expect(open.project.title).toBe('From a file');
  expect([workspace.persistence, workspace.projects, workspace.unsaved]).toEqual([null, null, false]);
});
