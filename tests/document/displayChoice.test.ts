import { expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { general } from '$lib/project/fields/general.ts';
import { choiceOf, displayOf } from '$lib/document/displayChoice.ts';
import { demoWith } from '../projects.ts';

test('every way to show lengths is a choice, and one that a project may hold', () => {
  for (const [choice] of general.display.options) {
    expect(choiceOf(displayOf(choice))).toBe(choice);
    expect(checkProject(demoWith({ '/display': displayOf(choice) })).ok).toBe(true);
  }
  for (const fraction of [null, 8, 16, 32, 64] as const) {
    expect(displayOf(choiceOf({ length: 'in', fraction }))).toEqual({ length: 'in', fraction });
  }
  expect(choiceOf({ length: 'mm', fraction: 16 })).toBe('mm');
  expect(displayOf('ells')).toEqual({ length: 'mm', fraction: null });
});
