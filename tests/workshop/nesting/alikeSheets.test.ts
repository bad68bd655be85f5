import { expect, test } from 'vitest';
import { alikeSheets } from '$lib/workshop/nesting/alikeSheets.ts';
import type { Placement, Sheet } from '$lib/workshop/part.ts';

const at = (part: string, x: number, turn = 0): Placement => ({ part, x, y: 5, turn });
const sheet = (number: number, placements: readonly Placement[], more: Partial<Sheet> = {}): Sheet => ({
  stock: 'board',
  number,
  width: 300,
  height: 200,
  placements,
  fill: 0.5,
  ...more,
});

test('the same parts in the same places are one drawing, whatever order they are told in', () => {
  const sheets = [
    sheet(1, [at('a', 5), at('b', 60)]),
    sheet(2, [at('b', 60), at('a', 5.0001)]),
    sheet(3, [at('a', 5)]),
    sheet(4, [at('a', 5), at('b', 60)]),
  ];
  expect(alikeSheets(sheets).map(({ sheet: { number }, numbers }) => [number, numbers])).toEqual([
    [1, [1, 2, 4]],
    [3, [3]],
  ]);
});

test.each<[string, Sheet]>([
  ['stock', sheet(2, [at('a', 5)], { stock: 'other' })],
  ['size', sheet(2, [at('a', 5)], { width: 310 })],
  ['an offcut', sheet(2, [at('a', 5)], { offcut: true })],
  ['a place', sheet(2, [at('a', 5.01)])],
  ['a turn', sheet(2, [at('a', 5, Math.PI)])],
  ['another part', sheet(2, [at('b', 5)])],
])('%s keeps sheets apart', (_, other) => {
  expect(alikeSheets([sheet(1, [at('a', 5)]), other])).toHaveLength(2);
});
