import { expect, test } from 'vitest';
import { letterOf } from '$lib/views/compare/letters.ts';

test('layouts are lettered as columns of a table are, each letter once', () => {
  expect([0, 1, 25, 26, 27, 51, 52, 701, 702].map(letterOf)).toEqual([
    'A',
    'B',
    'Z',
    'AA',
    'AB',
    'AZ',
    'BA',
    'ZZ',
    'AAA',
  ]);
  expect(new Set(Array.from({ length: 1000 }, (_, place) => letterOf(place))).size).toBe(1000);
});
