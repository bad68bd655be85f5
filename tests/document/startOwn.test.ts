import { expect, it } from 'vitest';
import { startOwn } from '$lib/document/startOwn.ts';
import { measuredOf } from '$lib/project/measured.ts';
import { settleProject } from '$lib/document/settle.ts';

it.each([
  ['mm', { length: 'mm', fraction: null }],
  ['in 16', { length: 'in', fraction: 16 }],
  ['in', { length: 'in', fraction: null }],
])(
  'a project of one’s own shows lengths as asked, has an answer, and nothing of it is measured: %s',
  (choice, display) => {
    const project = startOwn(choice);
    expect(project.display).toEqual(display);
    expect(project.example).toBe(false);
    expect(measuredOf(project, 0).entered).toBe(0);
    expect(settleProject(project, 0).faults).toEqual([]);
  },
);
