import { expect, test } from 'vitest';
import { whyNot } from '$lib/views/ui/whyNot.ts';

test.each([
  // As Chromium, Firefox and Safari word it; from memory but for the first.
  'Failed to fetch dynamically imported module: http://127.0.0.1/_app/x.js',
  'error loading dynamically imported module: http://127.0.0.1/_app/x.js',
  'Importing a module script failed.',
])('%s', (message) => {
  expect(whyNot(new TypeError(message))).toMatch(/^a part of the page could not be fetched.*press again/);
});

test('anything else is told as it is', () => {
  expect(whyNot(new Error('part wedge: a hole crosses its edge'))).toBe('part wedge: a hole crosses its edge');
  expect(whyNot('no room')).toBe('no room');
});
