import { expect, test } from 'vitest';
import { turnOf } from '$lib/views/document/undoKeys.ts';

const key = (name: string, held: Partial<KeyboardEvent> = {}) =>
  ({ key: name, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held }) as KeyboardEvent;

test.each([
  ['Ctrl+Z', key('z', { ctrlKey: true }), 'undo'],
  ['Cmd+Z', key('z', { metaKey: true }), 'undo'],
  ['Ctrl+Shift+Z', key('Z', { ctrlKey: true, shiftKey: true }), 'redo'],
  ['Cmd+Shift+Z', key('Z', { metaKey: true, shiftKey: true }), 'redo'],
  ['Ctrl+Y', key('y', { ctrlKey: true }), 'redo'],
  ['Cmd+Y, which opens the history of pages', key('y', { metaKey: true }), null],
  ['Z', key('z'), null],
  ['Ctrl+Alt+Z', key('z', { ctrlKey: true, altKey: true }), null],
  ['both at once', key('z', { ctrlKey: true, metaKey: true }), null],
])('%s', (_, event, turn) => {
  expect(turnOf(event)).toBe(turn);
});
