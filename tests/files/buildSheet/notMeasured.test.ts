import { expect, test } from 'vitest';
import { buildSheet } from '$lib/files/buildSheet/buildSheet.ts';
import { buildSheetPdf } from '$lib/files/buildSheet/buildSheetPdf.ts';
import { demoProject } from '$lib/project/demo.ts';
import { measuredOf, notEntered } from '$lib/project/measured.ts';
import { parseProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { readPdf } from '../readPdf.ts';

/** The example, its values its own. */
const example = sound(demoProject);

function sound(value: unknown): Project {
  const parsed = parseProject(JSON.stringify(value));
  if (!parsed.ok) throw new Error('the example is sound');
  return parsed.value;
}

function subjectOf(project: Project) {
  const [layout] = project.layouts;
  const made = layout && solve(project, layout);
  if (!made?.ok) throw new Error('the layout has a plan');
  return { plan: made.value, sheets: [] };
}

/** The same project with what some things say of their entered values. */
const withEntered = (project: Project, replace: (entered: unknown) => unknown): Project =>
  sound(JSON.parse(JSON.stringify(project), (key, value: unknown) => (key === 'entered' ? replace(value) : value)));

const told = (project: Project) =>
  buildSheet(subjectOf(project))
    .filter(({ id }) => id === 'not-measured')
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.kind === 'list' ? block.items : block.kind === 'text' ? [block.text] : []));

test('the example prints a caution with every value that nobody has measured, each once, by the form’s names', () => {
  const { entered, of } = measuredOf(example, 0);
  const [caution, ...things] = told(example);
  expect(entered).toBeLessThan(of);
  expect(caution).toMatch(new RegExp(`^Caution: ${entered} of ${of} values measured\\.`));
  const names = things.flatMap((thing) => thing.replace(/^[^:]*: /, '').split('; '));
  expect(names.length).toBeGreaterThanOrEqual(of - entered);
  expect(things).toContain('Desk: width; depth; height; gap to the wall');
  expect(things).toContain('Board “MDF 3 mm”: thickness; sheet width; sheet height');
  expect(things.filter((thing) => thing.startsWith('Driver “'))).toHaveLength(2);
  // Names, no pointers.
  expect(things.join(' ')).not.toMatch(/[/]|undefined/);
  // The left mark follows the right one.
  expect(things.join(' ')).not.toMatch(/left/i);
});

test('the caution stands in the PDF too', () => {
  const { pages } = readPdf(buildSheetPdf(subjectOf(example), 'A4'));
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  expect(words).toContain('values measured');
  expect(words).toContain('gap to the wall');
});

test('nothing is said once all is entered', () => {
  const mine = withEntered(example, () => undefined);
  expect(notEntered(mine, 0)).toEqual([]);
  expect(told(mine)).toEqual([]);
});
