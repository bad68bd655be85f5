import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layoutAfterUndo, layoutWithin } from '$lib/document/layoutShown.ts';

const named = (...names: readonly string[]) => ({ layouts: names.map((name) => ({ name })) });

describe('the layout to show after an undo', () => {
  test.each([
    ['the one that came back', named('a', 'c'), named('a', 'b', 'c'), 0, '/layouts', 1],
    ['the same one when another has gone', named('a', 'b', 'c'), named('b', 'c'), 2, '/layouts', 1],
    ['the nearest when it has gone itself', named('a', 'b'), named('a'), 1, '/layouts', 0],
    ['the same one when they changed places', named('a', 'b'), named('b', 'a'), 0, '/layouts/0/name', 1],
    ['the one with another name', named('a', 'x'), named('a', 'b'), 0, '/layouts/1/name', 1],
    ['the one that changed', named('a', 'b'), named('a', 'b'), 0, '/layouts/1/desk/outline/width', 1],
    ['the same one when something else changed', named('a', 'b'), named('a', 'b'), 1, '/speaker/width', 1],
  ])('is %s', (_, before, after, index, pointer, expected) => {
    expect(layoutAfterUndo(before, after, index, pointer)).toBe(expected);
  });

  test('is always one that there is', () => {
    const names = fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1 });
    fc.assert(
      fc.property(names, names, fc.nat(3), fc.nat(3), (before, after, index, at) => {
        const shown = layoutAfterUndo(named(...before), named(...after), index, `/layouts/${at}/name`);
        expect(after[shown]).toBeDefined();
      }),
    );
  });
});

test('an index is held within the layouts', () => {
  expect([-1, 0, 1, 7].map((index) => layoutWithin(named('a', 'b'), index))).toEqual([0, 0, 1, 1]);
  expect(layoutWithin({}, 3)).toBe(0);
});
