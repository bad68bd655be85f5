import { expect, test } from 'vitest';
import { cutListFile } from '$lib/files/cutListFile.ts';
import type { CutListRow } from '$lib/workshop/cutList.ts';

const row: CutListRow = {
  part: 'slice',
  stock: 'MDF 3 mm',
  thickness: 3.175,
  left: 6,
  right: 6,
  quantity: 12,
  width: 254,
  height: 25.4,
  area: 6451.6,
  cutLength: 558.8,
  sheets: [1, 2],
  label: 'L',
};

test('the cut list is in the unit that is shown: 25.4 mm to an inch, 645.16 mm² to a square inch', () => {
  expect(cutListFile([row])).toContain('Thickness mm');
  const [heads, cells] = cutListFile([row], 'in').trim().split(/\r?\n/);
  expect(heads).toContain('Thickness in');
  expect(heads).not.toContain('mm');
  expect(cells?.split(',').slice(2, 10).map(Number)).toEqual([0.125, 6, 6, 12, 10, 1, 10, 22]);
});
