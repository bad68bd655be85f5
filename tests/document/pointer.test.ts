import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointerTo } from '$lib/project/fault.ts';
import { deepFreeze } from '$lib/project/freeze.ts';
import { listAt, parentOf, patternOf, stepsOf, valueAt, withoutValue, withValue } from '$lib/document/pointer.ts';

/** The example document of RFC 6901, section 5, with its pointers and values. */
const rfc = deepFreeze({
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8,
});

describe('reading', () => {
  test.each([
    ['', rfc],
    ['/foo', ['bar', 'baz']],
    ['/foo/0', 'bar'],
    ['/', 0],
    ['/a~1b', 1],
    ['/c%d', 2],
    ['/e^f', 3],
    ['/g|h', 4],
    ['/i\\j', 5],
    ['/k"l', 6],
    ['/ ', 7],
    ['/m~0n', 8],
  ])('%j (RFC 6901)', (pointer, value) => {
    expect(valueAt(rfc, pointer)).toEqual(value);
  });

  test.each(['/bar', '/foo/2', '/foo/0/x', '/foo/length/x', '/__proto__', '/constructor', '/foo/map'])(
    '%s is nowhere',
    (pointer) => {
      expect(valueAt(rfc, pointer)).toBeUndefined();
    },
  );

  test('a list, or none', () => {
    expect(listAt(rfc, '/foo')).toEqual(['bar', 'baz']);
    expect(listAt(rfc, '/a~1b')).toEqual([]);
  });

  test('steps and pointers are two forms of one thing', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1 }), (steps) => {
        expect(stepsOf(pointerTo(...steps))).toEqual(steps);
        expect(parentOf(pointerTo(...steps))).toBe(pointerTo(...steps.slice(0, -1)));
      }),
    );
    expect(parentOf('')).toBeNull();
  });

  test('a pattern stands for every place in a list', () => {
    expect(patternOf('/layouts/0/monitors/12/x')).toBe('/layouts/*/monitors/*/x');
  });
});

/** Every pointer into a document. */
function pointersOf(value: unknown, at = ''): string[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([key, held]) => pointersOf(held, at + pointerTo(key)))];
}

const somewhere = fc
  .jsonValue({ maxDepth: 4 })
  .chain((document) =>
    fc.record({ document: fc.constant(document), pointer: fc.constantFrom(...pointersOf(document)) }),
  );

describe('changing', () => {
  test('puts the value there, leaves all else, and the old document too', () => {
    fc.assert(
      fc.property(somewhere, fc.jsonValue(), ({ document, pointer }, value) => {
        const before = JSON.stringify(document);
        const after = withValue(deepFreeze(document), pointer, value);
        expect(valueAt(after, pointer)).toEqual(value);
        expect(JSON.stringify(document)).toBe(before);
        expect(withValue(after, pointer, valueAt(document, pointer))).toEqual(document);
      }),
    );
  });

  test('shares what lies off the way', () => {
    const document = { near: { x: 1 }, far: { y: [1, 2] } };
    const after = withValue(document, '/near/x', 2);
    expect(valueAt(after, '/far')).toBe(document.far);
  });

  test('appends one past the end, and nowhere else', () => {
    expect(withValue(rfc, '/foo/2', 'new')).toMatchObject({ foo: ['bar', 'baz', 'new'] });
    for (const pointer of ['/foo/3', '/foo/-', '/foo/01', '/foo/x', '/none/x', '/foo/0/x']) {
      expect(withValue(rfc, pointer, 'new')).toEqual(rfc);
    }
  });

  test('a key that is also a name of the language is a key like any other', () => {
    const after = withValue({}, '/__proto__', { polluted: true });
    expect(Object.getPrototypeOf(after)).toBe(Object.prototype);
    expect(valueAt(after, '/__proto__/polluted')).toBe(true);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });

  test('takes a key or an entry out, and undoes an append', () => {
    expect(withoutValue({ a: 1, b: 2 }, '/a')).toEqual({ b: 2 });
    expect(withoutValue(rfc, '/foo/0')).toMatchObject({ foo: ['baz'] });
    expect(withoutValue(rfc, '/nothing')).toBe(rfc);
    fc.assert(
      fc.property(fc.array(fc.jsonValue()), fc.jsonValue(), (list, entry) => {
        const pointer = `/list/${list.length}`;
        expect(withoutValue(withValue({ list }, pointer, entry), pointer)).toEqual({ list });
      }),
    );
  });
});
