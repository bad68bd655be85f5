import { expect, it } from 'vitest';
import { writeProject } from '$lib/files/projectFile.ts';
import type { Project } from '$lib/project/project.ts';
import { project } from '../projects.ts';

it('writes a project that reads back equal', () => {
  const title = 'Schräg – <b>"A & B"</b> 😀';
  const sound = project({ '/title': title });
  const text = writeProject(sound);
  expect(JSON.parse(text)).toEqual(sound);
  expect(text).toContain('"title": "Schräg – <b>\\"A & B\\"</b> 😀"');
});

it('indents by two spaces, ends its last line, and opens with format and version', () => {
  const text = writeProject(project());
  expect(text.startsWith('{\n  "format": "wedgewright/project",\n  "version": 2,\n  "title": ')).toBe(true);
  expect(text.endsWith('\n}\n')).toBe(true);
});

it('keeps the order of keys whatever order the project has them in', () => {
  const sound = project();
  const { format, version, title, example, display, speaker, stock, printer, shop, sure, layouts } = sound;
  const { kerf, taper, spacing, margin, colours } = sound.cutter;
  const cutter = { colours, margin, spacing, taper, kerf };
  const shuffled: Project = {
    layouts,
    sure,
    shop,
    printer,
    cutter,
    stock,
    speaker,
    display,
    example,
    title,
    version,
    format,
  };
  expect(JSON.stringify(shuffled)).not.toBe(JSON.stringify(sound));
  expect(writeProject(shuffled)).toBe(writeProject(sound));
});

it('refuses what could not be read back', () => {
  const sound = project();
  const broken = { ...sound, speaker: { ...sound.speaker, width: NaN } };
  expect(() => writeProject(broken)).toThrow('expected a length from 20 to 3000 mm');
});
