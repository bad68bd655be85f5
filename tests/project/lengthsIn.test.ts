import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthsIn } from '$lib/project/lengthsIn.ts';
import { lengthWithUnit } from '$lib/project/lengthText.ts';
import { ownNames } from '$lib/project/ownNames.ts';
import { project } from '../projects.ts';

const decimal = { length: 'in', fraction: null } as const;
const eighths = { length: 'in', fraction: 8 } as const;

describe('lengths in a sentence', () => {
  test.each([
    ['It stands 25.4 mm over.', 'It stands 1.000″ over.'],
    ['from 254 to 508 mm', 'from 10.000″ to 20.000″'],
    ['a stop 50.8 mm high and 25.4 mm thick', 'a stop 2.000″ high and 1.000″ thick'],
    ['off by −25.4 mm', 'off by −1.000″'],
    ['880 kg/m³, 12.3°, 25 mm², 3 mm/s', '880 kg/m³, 12.3°, 25 mm², 3 mm/s'],
    ['no length at all', 'no length at all'],
  ])('%j reads %j in inches', (text, expected) => {
    expect(lengthsIn(text, decimal, [])).toBe(expected);
    expect(lengthsIn(text, 'in', [])).toBe(expected);
  });

  test('are fractions where those are shown', () => {
    expect(lengthsIn('25.4 mm and 30 mm', eighths, [])).toBe('1″ and ≈\u202f1\u00a01/8″');
  });

  test('stay in millimetres, and in the names of things', () => {
    const text = 'MDF 3 mm: 25.4 mm; MDF 3 mm again';
    expect(lengthsIn(text, 'mm', [])).toBe(text);
    expect(lengthsIn(text, decimal, ['MDF', 'MDF 3 mm'])).toBe('MDF 3 mm: 1.000″; MDF 3 mm again');
  });

  test('are all turned, whatever they are', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 99_999 }), { minLength: 1, maxLength: 6 }), (tenths) => {
        const says = (word: (mm: number) => string): string => tenths.map((one) => `a ${word(one / 10)} b`).join('; ');
        expect(
          lengthsIn(
            says((mm) => `${mm} mm`),
            decimal,
            [],
          ),
        ).toBe(says((mm) => lengthWithUnit(mm, decimal)));
      }),
    );
  });
});

test('the names of a project are those of all its things', () => {
  expect(ownNames(project())).toEqual(['Bindery desk', 'tweeter', 'woofer', 'MDF 3 mm', 'window side', 'leaning in']);
  expect(ownNames(null)).toEqual([]);
  expect(ownNames({ name: 3, list: [{ name: 'a' }, 'b'] })).toEqual(['a']);
});
