import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sameJson } from '$lib/project/sameJson.ts';

it.each([
  [{ a: 1, b: [1, 2] }, { b: [1, 2], a: 1 }, true],
  [{ a: 1, b: undefined }, { a: 1 }, true],
  [{ a: undefined }, { b: undefined }, true],
  [0, -0, true],
  [{ a: 1 }, { a: 1, b: 1 }, false],
  [{ a: undefined, b: 1 }, { a: 1 }, false],
  [[], {}, false],
  [[1, 2], [2, 1], false],
  [[1], [1, 2], false],
  [null, {}, false],
  ['1', 1, false],
  [{ toString: 1 }, {}, false],
])('%j and %j: %s', (one, other, same) => {
  expect(sameJson(one, other)).toBe(same);
  expect(sameJson(other, one)).toBe(same);
});

it('agrees with what the text of a file keeps', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(sameJson(value, JSON.parse(JSON.stringify(value)))).toBe(true);
    }),
  );
});

it('tells two values apart exactly when their text with sorted keys differs', () => {
  const sorted = (value: unknown): string =>
    JSON.stringify(value, (_, held: unknown) =>
      typeof held === 'object' && held !== null && !Array.isArray(held)
        ? Object.fromEntries(Object.entries(held).sort(([a], [b]) => (a < b ? -1 : 1)))
        : held,
    );
  const small = fc.jsonValue({ maxDepth: 2, stringUnit: fc.constantFrom('a', 'b') });
  fc.assert(
    fc.property(small, small, (one, other) => {
      expect(sameJson(one, other)).toBe(sorted(one) === sorted(other));
    }),
  );
});
