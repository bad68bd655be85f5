import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryText, entryValue, rangeIn, rangeMessage } from '$lib/project/entry.ts';
import { toe } from '$lib/project/fields/aim.ts';
import { speaker } from '$lib/project/fields/speaker.ts';
import { rods } from '$lib/project/fields/stand.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { outlines } from '$lib/project/fields/desk.ts';
import { fromMillimetres, toMillimetres } from '$lib/project/units.ts';

describe('what the document holds', () => {
  const width = outlines.rectangle.width;

  test('a number in mm, whatever the unit', () => {
    expect(entryValue('600', width, 'mm', false)).toBe(600);
    // One inch is 25.4 mm by definition.
    expect(entryValue('6.5', width, 'in', false)).toBe(165.1);
    expect(entryValue('10', toe.degrees, 'in', false)).toBe(10);
  });

  test('null for an empty text only where empty has a meaning', () => {
    expect(entryValue('  ', width, 'mm', true)).toBeNull();
    expect(entryValue('  ', width, 'mm', false)).toBe('  ');
  });

  test('the text itself where it is no number that a file can hold', () => {
    expect(entryValue('abc', width, 'mm', true)).toBe('abc');
    expect(entryValue('1e999', width, 'mm', true)).toBe('1e999');
    expect(entryValue('1e308', width, 'in', true)).toBe('1e308');
  });

  const anyNumber = fc.double({ min: -20000, max: 20000, noNaN: true });

  test('shown in mm it reads back as the same number', () => {
    fc.assert(
      fc.property(anyNumber, (value) => {
        expect(entryValue(entryText(value, width, 'mm'), width, 'mm', false)).toBe(value === 0 ? 0 : value);
      }),
    );
  });

  test('shown in inches it reads back within the last decimal shown', () => {
    fc.assert(
      fc.property(anyNumber, (value) => {
        const back = entryValue(entryText(value, width, 'in'), width, 'in', false);
        // Four decimals of an inch are shown: half of the last one, in mm.
        expect(Math.abs(Number(back) - value)).toBeLessThanOrEqual(0.00005 * 25.4 + 1e-9);
      }),
    );
  });

  test('typed in inches it shows as typed, to four decimals', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9999999, max: 9999999 }), (tenThousandths) => {
        const text = String(tenThousandths / 10000);
        expect(entryText(entryValue(text, width, 'in', false), width, 'in')).toBe(text);
      }),
    );
  });

  test('a text shows as it is, nothing as an empty field', () => {
    expect(entryText('12 or so', width, 'in')).toBe('12 or so');
    expect(entryText(null, width, 'mm')).toBe('');
    expect(entryText(undefined, width, 'mm')).toBe('');
    expect(entryText(1e-7, width, 'mm')).toBe('0.0000001');
  });
});

const numberFields = Object.values(fieldTable).filter((field) => field.kind === 'number');

describe('what is wrong with a number', () => {
  const { width: deskWidth } = outlines.rectangle;
  const { count: rodCount } = rods;
  const { degrees } = toe;
  const { mass } = speaker;

  test.each([
    [-5, 'mm', 'Enter 200 to 10000 mm'],
    [0, 'mm', 'Enter 200 to 10000 mm'],
    [199, 'mm', 'Enter 200 to 10000 mm'],
    [1e9, 'mm', 'Enter 200 to 10000 mm'],
    ['', 'mm', 'Enter 200 to 10000 mm'],
    ['  ', 'mm', 'Enter 200 to 10000 mm'],
    ['abc', 'mm', 'Enter 200 to 10000 mm'],
    ['NaN', 'mm', 'Enter 200 to 10000 mm'],
    [undefined, 'mm', 'Enter 200 to 10000 mm'],
    [-127, 'in', 'Enter 7.88 to 393.7 in'],
    [25.4, 'in', 'Enter 7.88 to 393.7 in'],
  ] as const)('%j in %s', (value, unit, message) => {
    expect(rangeMessage(value, deskWidth, unit)).toBe(message);
  });

  test('other units keep theirs', () => {
    // Larger than any number that a file holds: what was typed, and what is taken.
    expect(rangeMessage('1e999 ', degrees, 'mm')).toBe('Enter \u221290 to 90°, not 1e999');
    expect(rangeMessage(2.5, rodCount, 'in')).toBe('Enter 2 to 8, a whole number');
    expect(rangeMessage(91, degrees, 'in')).toBe('Enter \u221290 to 90°');
    expect(rangeMessage(0, mass, 'mm')).toBe('Enter 0.01 to 200 kg');
  });

  test('nothing, exactly within the range', () => {
    fc.assert(
      fc.property(fc.constantFrom(...numberFields), fc.double(), (range, value) => {
        const sound = value >= range.min && value <= range.max && (!('whole' in range) || Number.isInteger(value));
        expect(rangeMessage(value, range, 'mm') === null).toBe(sound);
      }),
    );
  });

  test('limits shown in inches lie within the real ones, and not far', () => {
    for (const range of numberFields.filter(({ unit }) => unit === 'mm')) {
      const shown = rangeIn(range, 'in');
      expect(shown.unit).toBe('in');
      expect(toMillimetres(shown.min, 'in')).toBeGreaterThanOrEqual(range.min);
      expect(toMillimetres(shown.max, 'in')).toBeLessThanOrEqual(range.max);
      // Two decimals of an inch are shown.
      expect(shown.min - range.min / 25.4).toBeLessThan(0.01);
      expect(range.max / 25.4 - shown.max).toBeLessThan(0.01);
    }
  });
});

test('inches and back are the same length, to the digits kept', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (tenThousandths) => {
      const mm = tenThousandths / 10000;
      expect(toMillimetres(fromMillimetres(mm, 'mm'), 'mm')).toBe(mm);
      const back = toMillimetres(fromMillimetres(mm, 'in'), 'in');
      // Twelve digits are kept, which is at most 5e-12 of the number off, twice.
      expect(Math.abs(back - mm)).toBeLessThanOrEqual(1.01e-11 * Math.abs(mm));
    }),
  );
});
