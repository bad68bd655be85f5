import { expect, test } from 'vitest';
import { planFile } from '$lib/files/planFile.ts';
import { solve } from '$lib/solution/solve.ts';
import { plainText } from '$lib/project/sentence.ts';
import { firstLayout, project } from '../projects.ts';
import { rowsOf } from '../inRows.ts';

test('has what there is to know of a stand in words, in mm', () => {
  const of = project({ '/layouts/0/stand': { lift: 30, corner: 30, rods: null }, '/display': { length: 'in' } });
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('the stand can be had');
  const { notes } = solved.value.stand.left;
  const file = JSON.parse(planFile(solved.value, rowsOf(solved.value))) as { stand: { left: { notes: unknown } } };
  expect(file.stand.left.notes).toEqual(notes.map(plainText));
  expect(file.stand.left.notes).toEqual([
    expect.stringMatching(/^The corners have a radius of [\d.]+ mm, not 30 mm: /),
  ]);
});

test('says how sure it is: the parts of every measured value, as the solution has them', () => {
  const of = project();
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('the stand can be had');
  const file = JSON.parse(planFile(solved.value, rowsOf(solved.value))) as { sure: unknown };
  expect(file.sure).toEqual(JSON.parse(JSON.stringify(solved.value.sure)));
  expect(solved.value.sure?.sides.right.by[0]?.value).toBe('setback');
});
