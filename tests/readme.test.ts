import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseProject } from '$lib/project/parse.ts';
import { root } from '../tools/root.mjs';

const read = (file: string): string => readFileSync(`${root}${file}`, 'utf8');

test('the project file shown in the README is sound', () => {
  const [, example = ''] = /```json\n([\s\S]*?)```/.exec(read('README.md')) ?? [];
  expect(parseProject(example)).toMatchObject({ ok: true, value: { title: 'Attic desk' } });
});

test.each([
  ['DEVELOPERS.md', 40],
  ['README.md', 2],
])('every path in %s is there', (file, least) => {
  const text = read(file);
  // A folder or a file of the sources, in backquotes or linked to.
  const paths = [
    ...text.matchAll(/[`(]((?:src|tests|tools|bench|static)\/[\w./-]*|[\w.]+\.(?:json|md|config\.js))[`)]/g),
  ]
    .map(([, path = '']) => path)
    .filter((path) => !['plan.json', 'project.json', 'manifest.json'].includes(path));
  expect(paths.length).toBeGreaterThan(least);
  expect(paths.filter((path) => !existsSync(`${root}${path}`))).toEqual([]);
});

test('every command in DEVELOPERS.md is there', () => {
  const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
  const named = [...read('DEVELOPERS.md').matchAll(/`npm run ([\w:]+)/g)].map(([, name = '']) => name);
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((name) => !(name in scripts))).toEqual([]);
});
