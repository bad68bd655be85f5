import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoProject } from '$lib/project/demo.ts';
import { desk } from '$lib/project/fields/desk.ts';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject, LONGEST_FILE, parseProject } from '$lib/project/parse.ts';
import { demoWith, firstLayout, project } from '../projects.ts';
import { notFinite } from '../notFinite.ts';
import { runs } from '../runs.ts';
import { plainText } from '$lib/project/sentence.ts';

function lines(changes: Record<string, unknown>): string[] {
  const result = checkProject(demoWith(changes));
  return result.ok ? [] : result.faults.map(faultLine);
}

describe('a sound project', () => {
  test('has every default filled in and cannot be changed', () => {
    const parsed = project();
    expect(firstLayout(parsed).stand).toEqual({
      lift: 12,
      build: 'stacked',
      base: 'turned',
      stock: null,
      width: null,
      frontMargin: 0,
      rearMargin: 0,
      ends: 'plumb',
      stop: null,
      minimumEdge: 3,
      rods: { diameter: 6, count: 2, clearance: 0.1, edge: 2 },
      feet: 0,
      pad: 0,
      veneer: 0,
      veneerFaces: { top: true, front: true, rear: true, sides: true, base: false },
      glue: 0,
      corner: null,
      relief: null,
      cheeks: null,
      ribs: null,
      pockets: null,
      cable: null,
      recess: null,
      friction: 0.3,
      frictionMost: null,
      padFriction: null,
      feetFriction: null,
    });
    expect(Object.isFrozen(parsed)).toBe(true);
    expect(Object.isFrozen(parsed.speaker.drivers[0])).toBe(true);
  });

  test('reads back as itself', () => {
    const parsed = project();
    expect(parseProject(JSON.stringify(parsed))).toEqual({ ok: true, value: parsed });
    expect(parseProject(`\uFEFF${JSON.stringify(parsed)}`)).toEqual({ ok: true, value: parsed });
  });

  test.each([
    ['a desk of 400 mm', { '/layouts/0/desk/outline/width': 400 }],
    ['a studio of 6 m', { '/layouts/0/desk/outline/width': 6000, '/layouts/0/listener/setback': 3000 }],
  ])('may be %s', (_, changes) => {
    expect(lines(changes)).toEqual([]);
  });
});

describe('faults', () => {
  test.each<[Record<string, unknown>, string]>([
    [{ '/layouts/0/desk/outline/width': -5 }, '/layouts/0/desk/outline/width: expected a length over 0 mm, got -5'],
    [
      { '/layouts/0/desk/outline/width': 20000 },
      '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got 20000',
    ],
    [
      { '/layouts/0/desk/outline/width': '1400' },
      '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got "1400"',
    ],
    [
      { '/layouts/0/desk/outline/width': null },
      '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got null',
    ],
    [
      { '/layouts/0/desk/outline/width': undefined },
      '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got nothing',
    ],
    [
      { '/layouts/0/desk/outline/width': NaN },
      '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got NaN',
    ],
    [
      { '/layouts/0/desk/outline/width': Infinity },
      '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got Infinity',
    ],
    [
      { '/layouts/0/desk/colour': 1 },
      `/layouts/0/desk/colour: unknown key, expected one of ${[...Object.keys(desk), 'outline'].join(', ')}`,
    ],
    [
      { '/speaker/drivers/0/height': 265 },
      '/speaker/drivers/0/height: expected a length from 12.5 to 257.5 mm so that the rim stays on the baffle, got 265',
    ],
    [
      { '/speaker/drivers/1/offset': -40 },
      '/speaker/drivers/1/offset: expected a position from -35 to 35 mm so that the rim stays on the baffle, got -40',
    ],
    [
      { '/speaker/drivers/1/diameter': 166 },
      '/speaker/drivers/1/diameter: expected a driver that fits the baffle, 165 mm at most, got 166',
    ],
    [
      { '/speaker/drivers/1/radiating': 95.1 },
      "/speaker/drivers/1/radiating: expected a length of 95 mm at most, as the rim's diameter, got 95.1",
    ],
    [{ '/speaker/drivers/1/radiating': 0 }, '/speaker/drivers/1/radiating: expected a length over 0 mm, got 0'],
    [
      { '/speaker/drivers/1/name': 'tweeter' },
      '/speaker/drivers/1/name: expected a name not used before, got "tweeter"',
    ],
    [
      { '/speaker/crossovers/0/between': ['tweeter', 'horn'] },
      '/speaker/crossovers/0/between/1: expected the name of a driver ("tweeter", "woofer"), got "horn"',
    ],
    [
      { '/layouts/0/aim/over': { postures: ['standing'] } },
      '/layouts/0/aim/over/postures/0: expected the name of a posture ("leaning in"), got "standing"',
    ],
    [
      { '/layouts/0/aim/over': { postures: ['leaning in', 'leaning in'] } },
      '/layouts/0/aim/over/postures/1: expected each posture once, got "leaning in" again',
    ],
    [
      { '/layouts/0/aim/over': { postures: 'some' } },
      '/layouts/0/aim/over/postures: expected "all" or a list of 0 to 12 posture names, got "some"',
    ],
    [
      { '/layouts/0/aim/over': { postures: 'all', by: 'least' } },
      '/layouts/0/aim/over/by: expected "worst" or "mean", got "least"',
    ],
    [
      { '/layouts/0/listener/postures/0/weight': 0 },
      '/layouts/0/listener/postures/0/weight: expected a weight over 0, got 0',
    ],
    [
      { '/layouts/0/aim/through': 'horn' },
      '/layouts/0/aim/through: expected the name of a driver ("tweeter", "woofer"), got "horn"',
    ],
    [
      { '/layouts/0/aim/toe': { rule: 'sideways' } },
      '/layouts/0/aim/toe/rule: expected "to-head" or "to-ear" or "behind-head" or "straight" or "as-set", got "sideways"',
    ],
    [
      { '/layouts/0/aim/toe': { rule: 'behind-head' } },
      '/layouts/0/aim/toe/distance: expected a length from 0 to 10000 mm, got nothing',
    ],
    [
      { '/layouts/0/stand/stock': 'ash' },
      '/layouts/0/stand/stock: expected the name of a stock ("MDF 3 mm"), got "ash"',
    ],
    [
      { '/layouts/0/stand/rods': { count: 2.5 } },
      '/layouts/0/stand/rods/count: expected a whole number from 2 to 8, got 2.5',
    ],
    [
      { '/layouts/0/stand/lift': undefined },
      '/layouts/0/stand/lift: expected a length from 0 to 1500 mm, got nothing: only "lift-to-ear" finds the lift by itself',
    ],
    [
      { '/layouts/0/stand/frictionMost': 0.2 },
      '/layouts/0/stand/frictionMost: expected at least the least friction, 0.3, got 0.2',
    ],
    [{ '/title': 'two\nlines' }, '/title: expected one line of 1 to 200 characters, got "two\\nlines"'],
    [{ '/layouts': [] }, '/layouts: expected a list of 1 to 50 layouts, got a list of 0'],
    [{ '/version': 3 }, '/version: expected 2 or lower, got 3: a newer Wedgewright wrote this file'],
    [{ '/version': 0 }, '/version: expected a whole number from 1 to 2, got 0'],
    [{ '/format': 'other' }, '/format: expected "wedgewright/project", got "other"'],
    [
      { '/speaker/baffleRake': 40 },
      '/speaker/baffleRake: expected a baffle that leaves some depth at the top of the cabinet, got 40°: the top would be -21.6 mm deep',
    ],
  ])('%o', (changes, line) => {
    expect(lines(changes)).toContain(line);
  });

  test('come all at once, not one by one', () => {
    expect(
      lines({ '/layouts/0/desk/outline/width': -5, '/speaker/depth': 'deep', '/stock/0/thickness': 0.01 }),
    ).toEqual([
      '/speaker/depth: expected a length from 20 to 3000 mm, got "deep"',
      '/stock/0/thickness: expected a length from 0.2 to 100 mm, got 0.01',
      '/layouts/0/desk/outline/width: expected a length over 0 mm, got -5',
    ]);
  });

  test('a key that every object inherits is unknown like any other', () => {
    const document = JSON.stringify(demoProject).replace('"speaker":', '"__proto__":{"x":1},"speaker":');
    const result = parseProject(document);
    expect(result.ok ? [] : result.faults.map(({ pointer }) => pointer)).toEqual(['/__proto__']);
  });
});

describe('hostile input', () => {
  test('text that is not JSON, or not a project', () => {
    for (const text of ['', '{', 'null', '[]', '"x"', '<svg/>', '1e999']) {
      const result = parseProject(text);
      expect(result.ok).toBe(false);
    }
  });

  test('a hundred thousand lists in each other', () => {
    const deep = '['.repeat(100_000) + ']'.repeat(100_000);
    expect(parseProject(deep).ok).toBe(false);
    const inside = JSON.stringify(demoProject).replace('"Bindery desk"', deep);
    const result = parseProject(inside);
    expect(result.ok ? '' : result.faults.map(faultLine).join()).toBe(
      '/title: expected one line of 1 to 200 characters, got a list of 1',
    );
  });

  test.each(['', ' ', '\n'])('a title of %j is told of once', (title) => {
    const result = checkProject(demoWith({ '/title': title }));
    expect(result.ok ? [] : result.faults.map(({ pointer }) => pointer)).toEqual(['/title']);
  });

  test('50 MB of text is refused by its size alone', () => {
    const result = parseProject(' '.repeat(50_000_000));
    expect(result.ok ? '' : result.faults.map(faultLine).join()).toBe(
      `/: expected a project file of at most ${LONGEST_FILE / 1e6} million characters, got 50.0 million`,
    );
  });

  test('a list of a million drivers is refused by its length alone', () => {
    const result = checkProject(demoWith({ '/speaker/drivers': Array.from({ length: 1_000_000 }, () => 1) }));
    expect(result.ok ? [] : result.faults.map(faultLine)).toEqual([
      '/speaker/drivers: expected at most 2000 entries, got 1000000',
    ]);
  });

  test('a list may be as long as its own limit says', () => {
    const locked = Array.from({ length: 300 }, (_, i) => ({ part: `slice ${i}`, sheet: 1, x: 0, y: 0 }));
    expect(checkProject(demoWith({ '/layouts/0/arrangement': { locked } })).ok).toBe(true);
  });

  test('many faults are counted, not listed', () => {
    const result = checkProject(demoWith({ '/layouts': Array.from({ length: 40 }, () => ({})) }));
    expect(result.ok ? [] : result.faults.length).toBe(51);
    expect(result.ok ? '' : result.faults.at(-1)?.message).toMatch(/^expected a project, got \d+ further faults/);
  });

  /** Every place in the demo's document, as a JSON pointer. */
  function places(value: unknown, at = ''): string[] {
    if (typeof value !== 'object' || value === null) return [at];
    return [at, ...Object.entries(value).flatMap(([key, held]) => places(held, `${at}/${key}`))];
  }

  const odd = fc.oneof(
    fc.jsonValue(),
    fc.double(),
    fc.string(),
    fc.constantFrom(undefined, NaN, Infinity, -Infinity, 1e308, -0, '', '1e5', '__proto__', {}, [], null, true),
  );

  test('random documents and the demo with random values in random places: a typed project or faults, never more', () => {
    const somewhere = fc.constantFrom(...places(demoWith()).filter((at) => at !== ''));
    const mutated = fc.dictionary(somewhere, odd, { minKeys: 1, maxKeys: 4 }).map((changes): unknown => {
      try {
        return demoWith(changes);
      } catch {
        // One change took away what the next one would change.
        return { ...demoProject, ...changes };
      }
    });
    fc.assert(
      fc.property(fc.oneof(mutated, fc.jsonValue(), odd), (document) => {
        const result = checkProject(document);
        if (result.ok) {
          expect(notFinite(result.value)).toEqual([]);
          expect(checkProject(result.value)).toEqual(result);
        } else {
          expect(result.faults.length).toBeGreaterThan(0);
          for (const { pointer, message } of result.faults) {
            expect(pointer).toMatch(/^(\/|$)/);
            expect(plainText(message)).toMatch(/expected/);
            expect(plainText(message)).not.toMatch(/\n/);
          }
        }
      }),
      { numRuns: runs(2000) },
    );
  });

  test('random text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(parseProject(text).ok).toBe(false);
      }),
      { numRuns: runs(500) },
    );
  });
});
