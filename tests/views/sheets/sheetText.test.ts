import { expect, test } from 'vitest';
import { searchText } from '$lib/views/sheets/sheetText.ts';

test.each(['stopped', 'time'] as const)(
  'a search ended as %s tells of sheets only where it has found some',
  (ending) => {
    expect(searchText(null, ending, true)).toMatch(/What you see .*can be cut\.$/);
    const none = searchText(null, ending, false);
    expect(none).not.toMatch(/you see|best|can be cut/);
    expect(none).toMatch(/before .* found.*Search from another start/);
  },
);

test('a search that goes on or is through says so, whatever it has found', () => {
  for (const found of [false, true]) {
    expect(searchText(0.4, null, found)).toMatch(/^Looking for fewer sheets/);
    expect(searchText(null, 'done', found)).toBe('The search has come to its end.');
  }
});
