import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeName } from '$lib/project/names.ts';
import { LONGEST_TEXT } from '$lib/project/limits.ts';
import { project } from '../projects.ts';

describe('a name that is free', () => {
  it.each([
    ['window side', [], 'window side'],
    ['window side', ['window side'], 'window side 2'],
    ['window side', ['window side', 'window side 2'], 'window side 3'],
    ['window side 2', ['window side', 'window side 2'], 'window side 3'],
    ['MDF 3 mm', ['MDF 3 mm'], 'MDF 3 mm 2'],
    ['12', ['12'], '12 2'],
    ['room 9', ['room 9', 'room 11'], 'room 10'],
    ['a  2', ['a  2'], 'a  2 2'],
  ])('%j beside %j is %j', (name, taken, free) => {
    expect(freeName(name, taken)).toBe(free);
  });

  it('cuts a long name so that its number fits, and splits no character', () => {
    const long = `${'a'.repeat(LONGEST_TEXT - 3)}😀b`;
    expect(long).toHaveLength(LONGEST_TEXT);
    expect(freeName(long, [long])).toBe(`${'a'.repeat(LONGEST_TEXT - 3)} 2`);
  });

  it('is never taken, and always a name that a project can have', () => {
    const word = fc.string({ minLength: 1, maxLength: LONGEST_TEXT, unit: 'grapheme' }).filter((text) => {
      return text.trim() !== '' && text.length <= LONGEST_TEXT && !/[\p{Cc}\u2028\u2029]/u.test(text);
    });
    fc.assert(
      fc.property(word, fc.integer({ min: 0, max: 6 }), (name, copies) => {
        const taken = [name];
        for (let copy = 0; copy < copies; copy += 1) {
          const next = freeName(taken.at(-1) ?? name, taken);
          expect(taken).not.toContain(next);
          taken.push(next);
        }
        expect(project({ '/title': taken.at(-1) }).title).toBe(taken.at(-1));
      }),
    );
  });
});
