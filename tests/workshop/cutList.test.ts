import { expect, it } from 'vitest';
import { circle } from '$lib/geometry/contour.ts';
import { cutList, quantityText } from '$lib/workshop/cutList.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import { wedge } from './shapes.ts';

const hole = circle([80, 8], 3);
const part = wedge(100, 5, 30, { quantity: 50, inside: [hole], labels: [{ text: 'FRONT', height: 4, x: 50, y: 5 }] });
const sheet = (number: number, ...parts: string[]): Sheet => ({
  stock: 'board',
  number,
  width: 300,
  height: 200,
  placements: parts.map((name) => ({ part: name, x: 0, y: 0, turn: 0 })),
  fill: 0,
});
const takes = { left: [{ part: 'slice', quantity: 20 }], right: [{ part: 'slice', quantity: 30 }] };
const sheets = [sheet(1, 'slice', 'slice'), sheet(2, 'cheek'), sheet(3, 'cheek', 'slice')];

it('gives size, area and cut length of one copy', () => {
  const [row] = cutList([part], takes, sheets);
  expect(row).toMatchObject({
    part: 'slice',
    stock: 'board',
    thickness: 3,
    left: 20,
    right: 30,
    quantity: 50,
    width: 100,
    height: 30,
    label: 'FRONT',
  });
  // A trapezoid with plumb ends, less a round hole; round it: two ends, the base, the slope, and the hole's rim.
  expect(row?.area).toBeCloseTo((100 * (5 + 30)) / 2 - Math.PI * 9, 9);
  expect(row?.cutLength).toBeCloseTo(100 + 5 + 30 + Math.sqrt(100 ** 2 + 25 ** 2) + 2 * Math.PI * 3, 9);
});

it('names the sheets that carry a part, and none for a part that is on none', () => {
  const other = { ...part, name: 'other' };
  const elsewhere = { ...part, stock: 'other board' };
  const rows = cutList([part, other, elsewhere], takes, sheets);
  expect(rows.map(({ sheets: numbers }) => numbers)).toEqual([[1, 3], [], []]);
});

it.each([
  [{ left: 53, right: 53, quantity: 106 }, '53 for each stand, 106 for both'],
  [{ left: 0, right: 2, quantity: 2 }, '2 for the right stand'],
  [{ left: 1, right: 2, quantity: 3 }, '1 for the left stand, 2 for the right one'],
])('says of %j what it is for', (counts, said) => {
  expect(quantityText(counts)).toBe(said);
});
