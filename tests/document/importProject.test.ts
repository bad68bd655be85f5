import { expect, it } from 'vitest';
import { LONGEST_FILE } from '$lib/project/parse.ts';
import { writeProject } from '$lib/files/projectFile.ts';
import { readProject } from '$lib/document/importProject.ts';
import { demoWith, project } from '../projects.ts';

const refusal = (message: string, pointer = '') => ({ ok: false, faults: [{ pointer, message }] });

it('reads a project from a text and from a file, with or without a byte order mark', async () => {
  const sound = { ok: true, value: project({ '/title': 'Schräg 😀' }) };
  const text = writeProject(sound.value);
  expect(await readProject(text)).toEqual(sound);
  expect(await readProject(new Blob([text]))).toEqual(sound);
  expect(await readProject(new Blob([`\uFEFF${text}`]))).toEqual(sound);
});

it('lists the faults of a bad project with their pointers', async () => {
  const bad = JSON.stringify(demoWith({ '/layouts/0/desk/outline/width': -5, '/speaker/depth': 'deep' }));
  expect(await readProject(new Blob([bad]))).toEqual({
    ok: false,
    faults: [
      { pointer: '/speaker/depth', message: 'expected a length from 20 to 3000 mm, got "deep"' },
      { pointer: '/layouts/0/desk/outline/width', message: 'expected a length over 0 mm, got -5' },
    ],
  });
});

it('refuses a file that is too large before it reads it', async () => {
  const large = new Blob(['x'.repeat(LONGEST_FILE + 1_000_000)]);
  large.arrayBuffer = () => Promise.reject(new Error('read all the same'));
  expect(await readProject(large)).toEqual(refusal('expected a project file of at most 4 MB, got 5 MB'));
});

it('refuses what is no text, and what cannot be read', async () => {
  expect(await readProject(new Blob([Uint8Array.of(0x50, 0x4b, 0xff, 0xfe)]))).toEqual(
    refusal('expected a text in UTF-8, got something else: is this a project file?'),
  );
  const gone = new Blob(['{}']);
  gone.arrayBuffer = () => Promise.reject(new DOMException('gone', 'NotReadableError'));
  expect(await readProject(gone)).toEqual(
    refusal('expected a file that can be read, got one that is gone or may not be opened'),
  );
});
