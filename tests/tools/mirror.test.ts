import { existsSync, readdirSync } from 'node:fs';
import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../../tools/root.mjs';

const below = (folder: string): string[] =>
  readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' }).map((file) => file.replaceAll('\\', '/'));

const nameOf = (file: string): string =>
  posix.basename(file).replace(/\.((apart\.)?test\.ts|svelte\.ts|svelte|ts)$/, '');
const folderOf = (file: string): string => posix.dirname(file);

const sources = below('src/lib').filter((file) => /\.(ts|svelte)$/.test(file));
const rooms = new Set(sources.map((file) => file.split('/')[0] ?? ''));
const tests = below('tests').filter((file) => file.endsWith('.test.ts') && rooms.has(file.split('/')[0] ?? ''));

test('tests mirror the rooms: every folder of theirs is one of src/lib', () => {
  expect(tests.length).toBeGreaterThan(100);
  const strays = tests.filter((file) => !existsSync(`${root}src/lib/${folderOf(file)}`));
  expect(strays).toEqual([]);
});

test('a test that is named after a file lies where that file does', () => {
  const folders = new Map<string, string[]>();
  for (const file of sources) folders.set(nameOf(file), [...(folders.get(nameOf(file)) ?? []), file]);
  const named = tests.filter((file) => folders.has(nameOf(file)));
  expect(named.length).toBeGreaterThan(80);
  const strays = named.filter((file) => !folders.get(nameOf(file))?.some((one) => folderOf(one) === folderOf(file)));
  expect(strays).toEqual([]);
});
