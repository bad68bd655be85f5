import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseProject } from '$lib/project/parse.ts';
import { root } from '../tools/root.mjs';

test('the project file shown in the README is sound', () => {
  const text = readFileSync(`${root}README.md`, 'utf8');
  const [, example = ''] = /```json\n([\s\S]*?)```/.exec(text) ?? [];
  expect(parseProject(example)).toMatchObject({ ok: true, value: { title: 'Attic desk' } });
});
