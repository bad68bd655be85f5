import { expect, test } from 'vitest';
import { searchText } from '$lib/views/sheets/sheetText.ts';

test('a search that was cancelled before its first arrangement offers nothing to cut', () => {
  const text = searchText(null, true, false);
  expect(text).not.toMatch(/you see|best|can be cut/);
  expect(text).toMatch(/before .* found.*Try another arrangement/);
});

test('a search that goes on or is through says so', () => {
  for (const cancelled of [false, true]) {
    expect(searchText(0.4, cancelled, false)).toMatch(/^Looking for fewer sheets.* Files are made when the search/);
  }
  expect(searchText(null, false, true)).toBe('The search has come to its end.');
  expect(searchText(null, false, false)).toBe('');
});
