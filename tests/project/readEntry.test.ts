import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryText, entryValue } from '$lib/project/entry.ts';
import { entryUnits, quantityOf, type Quantity } from '$lib/project/entryUnits.ts';
import { lengthText, lengthWithUnit } from '$lib/project/lengthText.ts';
import { outlines } from '$lib/project/fields/desk.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { LONGEST_ENTRY, readEntry } from '$lib/project/readEntry.ts';
import { toMillimetres, type Denominator, type LengthUnit } from '$lib/project/units.ts';
import { runs } from '../runs.ts';

const valueOf = (text: string, quantity: Quantity = 'length', unit: LengthUnit = 'mm'): number => {
  const reading = readEntry(text, quantity, unit);
  if (!reading.ok) throw new Error(`${text}: ${reading.message}`);
  return reading.value;
};

const messageOf = (text: string, quantity: Quantity = 'length'): string => {
  const reading = readEntry(text, quantity, 'mm');
  return reading.ok ? `value ${reading.value}` : reading.message;
};

const IN = 25.4;
const FT = 304.8;

describe('a length', () => {
  test.each([
    ['600/2', 600 / 2],
    ['600 ÷ 2', 300],
    ['2 x 305', 610],
    ['2x305', 610],
    ['0x10', 0],
    ['2×305 + 4*5', 630],
    ['100 − 3 − 4', 93],
    ['-(3 + 4) × 2', -14],
    ['--5', 5],
    ['+5', 5],
    ['-0', 0],
    ['0.1 + 0.2', 0.3],
    ['1e3', 1000],
    ['47.6 cm', 476],
    ['47,6cm', 476],
    ['1.2 m', 1200],
    ['1 m 20 cm', 1200],
    ['18 3/4"', 18.75 * IN],
    ['18 3/4 in', 18.75 * IN],
    ['18 3/4', 18.75],
    ['18 3⁄4″', 18.75 * IN],
    ['18¾ inches', 18.75 * IN],
    ['18 ½', 18.5],
    ['½"', IN / 2],
    ['3/4"', 0.75 * IN],
    ['-18 3/4', -18.75],
    [`1' 6 1/2"`, FT + 6.5 * IN],
    ['1′6½″', FT + 6.5 * IN],
    ['1’ 6”', 18 * IN],
    ["1' 6''", 18 * IN],
    [`1' 1/2"`, 12.5 * IN],
    ["5' 6", 66 * IN],
    [`-1' 6"`, -18 * IN],
    [`1' - 6"`, 6 * IN],
    ['1 ft. 6 in.', 18 * IN],
    ['1 ft 6 in / 2', 9 * IN],
    ['1 1/2 in + 3mm', 1.5 * IN + 3],
    ['(1 1/2 + 3/4) in', 2.25 * IN],
    ['600/2 mm', 300],
    ['2 x 1/2 in', IN],
    ['6/3/2 in', IN],
    ['6 in / 3 in * 2 cm', 40],
    ['1 400', 1400],
    ['1 400 mm', 1400],
    [' 12 345,5\tmm\n', 12345.5],
    ['1 234 567', 1234567],
    ['2 x 1 400', 2800],
    ['1\u202f234.5', 1234.5],
    ['1\u2009234,5 mm', 1234.5],
    ['476\u202fmm', 476],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234,567', 1234567],
    ['1.234.567,8', 1234567.8],
    ['1.234', 1.234],
    ['0,125', 0.125],
    [',5', 0.5],
    ['18−3/4', 17.25],
    ['18 - 3/4', 17.25],
  ])('%j is %d mm', (text, mm) => {
    // Reckoned values keep twelve digits.
    expect(valueOf(text)).toBeCloseTo(mm, 9);
  });

  test.each([
    ['18 3/4', 18.75 * IN],
    ['600/2', 300 * IN],
    ['29 1/2', 29.5 * IN],
    ['29 1/2"', 29.5 * IN],
    ['29 1/2 in', 29.5 * IN],
    ['29½', 29.5 * IN],
    ['749.3 mm', 749.3],
    ['1 + 2 cm', IN + 20],
    ['47.6 cm', 476],
    ["1' + 1", 13 * IN],
  ])('%j is %d mm where bare numbers are inches', (text, mm) => {
    expect(valueOf(text, 'length', 'in')).toBeCloseTo(mm, 9);
  });

  test.each([
    ['', 'expected a number, got nothing'],
    ['  ', 'expected a number, got nothing'],
    ['3 *', 'expected a number, got nothing more, at the end'],
    ['* 3', 'expected a number, at character 1'],
    ['mm', 'expected a number before mm, at character 1'],
    ['(1 + 2', 'expected ) or one of + − × ÷, got nothing more, at the end'],
    ['1 + 2)', 'expected a ( before this ), at character 6'],
    ['5 km', 'expected mm, cm, m, in or ft, got “km”, at character 3'],
    ['5 mm mm', 'expected one unit after a number, mm, cm, m, in or ft, at character 6'],
    ['(3 in) mm', 'expected no second unit after the brackets, at character 8'],
    ['5 6', 'expected one of + − × ÷ before this, at character 3'],
    ['2 (3)', 'expected one of + − × ÷ before this, at character 3'],
    ['5 / 0', 'expected a number other than 0 to divide by, at character 3'],
    ['1 3/0', 'expected a number other than 0 to divide by, at character 5'],
    ['2 in * 3 in', 'expected a length times a number, got it times another, at character 6'],
    ['6 in / 3 in', 'expected a length, got one divided by another, at character 1'],
    ['100 / (2 in)', 'expected a number to divide by, got a length, at character 5'],
    ['6 in / 3 in + 1 mm', 'expected a length to add to, got one divided by another, at character 13'],
    ['1 m 20 in', 'expected a smaller unit that goes with m, or one of + − × ÷ before the number, at character 8'],
    ['6 in 1 ft', 'expected a smaller unit that goes with in, or one of + − × ÷ before the number, at character 8'],
    ['5 mm 3', 'expected one of + − × ÷ before this number, or a unit after it, at character 6'],
    ['1,234', 'expected 1234 or 1.234, got 1,234, which could be either, at character 1'],
    ['12,34.5', 'expected one decimal point, or groups of three digits, got 12,34.5, at character 1'],
    ['1.2.3', 'expected one decimal point, or groups of three digits, got 1.2.3, at character 1'],
    ['1 200/2', 'expected a fraction under 1 after a whole number, as in 18 3/4, at character 3'],
    ['1 200/250', 'expected a fraction under 1 after a whole number, as in 18 3/4, at character 3'],
    [`1'-6"`, 'expected a space in place of this hyphen to add, or spaces round it to take away, at character 3'],
    ['18-3/4', 'expected a space in place of this hyphen to add, or spaces round it to take away, at character 3'],
    ['18-½', 'expected a space in place of this hyphen to add, or spaces round it to take away, at character 3'],
    ['1e999', 'expected a smaller number, got 1e999, at character 1'],
    ['<b>5</b>', 'expected a number, a unit or one of + − × ÷ ( ), got “<”, at character 1'],
    ['process.exit()', 'expected mm, cm, m, in or ft, got “process”, at character 1'],
    ['9'.repeat(LONGEST_ENTRY + 1), `expected at most 120 characters, got 121, at character 121`],
    [`${'('.repeat(40)}1`, 'expected brackets at most 24 deep, at character 26'],
    [`${'-'.repeat(40)}1`, 'expected brackets at most 24 deep, at character 26'],
  ])('%j is refused', (text, message) => {
    expect(messageOf(text)).toBe(message);
  });
});

describe('other quantities', () => {
  test.each<[string, Quantity, number]>([
    ['12.5°', 'angle', 12.5],
    ['12.5', 'angle', 12.5],
    ['-12° 30′', 'angle', -12.5],
    [`12°30'36"`, 'angle', 12.51],
    ['12 deg', 'angle', 12],
    ['90/4', 'angle', 22.5],
    ['3.14159265358979 rad', 'angle', 180],
    ['2.8 kHz', 'frequency', 2800],
    ['2,8k', 'frequency', 2800],
    ['2800 hz', 'frequency', 2800],
    ['500 g', 'mass', 0.5],
    ['1 kg 250 g', 'mass', 1.25],
    // The pound is 0.45359237 kg by definition (1959), the ounce a sixteenth of it.
    ['10 lb', 'mass', 4.5359237],
    ['9 lb 4 oz', 'mass', 9.25 * 0.45359237],
    // The two scales meet at −40; water freezes at 32 °F and 273.15 K and boils at 212 °F (by definition, from memory).
    ['-40 °F', 'temperature', -40],
    ['32F', 'temperature', 0],
    ['212 °F', 'temperature', 100],
    ['293.15 K', 'temperature', 20],
    ['20°', 'temperature', 20],
    ['18 + 2', 'temperature', 20],
    ['(60 + 8) °F', 'temperature', 20],
    ['0.75 g/cm³', 'density', 750],
    ['750 kg/m3', 'density', 750],
    ['1/2', 'number', 0.5],
  ])('%j as %s is %d', (text, quantity, value) => {
    expect(valueOf(text, quantity)).toBeCloseTo(value, 9);
  });

  test('a pound in a cubic foot: water weighs 62.428 of them, 1000 kg/m³ (handbook value, from memory)', () => {
    expect(valueOf('62.428 lb/ft³', 'density')).toBeCloseTo(1000, 1);
  });

  test.each<[string, Quantity, string]>([
    ['5 mm', 'angle', 'expected °, ′, ″ or rad, got “mm”, at character 3'],
    ['5 mm', 'number', 'expected no unit, got “mm”, at character 3'],
    ['20 °C + 2', 'temperature', 'expected a temperature with a unit to stand alone, at character 7'],
    ['2 × 20 °C', 'temperature', 'expected a temperature with a unit to stand alone, at character 3'],
    ['40 °F / 2', 'temperature', 'expected a temperature with a unit to stand alone, at character 7'],
  ])('%j as %s is refused', (text, quantity, message) => {
    expect(messageOf(text, quantity)).toBe(message);
  });
});

const quantities: readonly Quantity[] = Object.values(fieldTable).flatMap((field) =>
  field.kind === 'number' ? [quantityOf(field)] : [],
);
const anyQuantity = fc.constantFrom(...new Set(quantities));
const anyUnit = fc.constantFrom<LengthUnit>('mm', 'in');

describe('any text', () => {
  const likely = fc
    .array(fc.constantFrom(...'0123456789.,+-−×*/÷() \u202f′″\'"½¾°xminftckgHzFe'), { maxLength: 40 })
    .map((characters) => characters.join(''));

  test('gives a finite value, or a reason with its place in the text; never an exception', () => {
    fc.assert(
      fc.property(
        fc.oneof(likely, fc.string({ unit: 'binary', maxLength: 200 })),
        anyQuantity,
        anyUnit,
        (text, quantity, unit) => {
          const reading = readEntry(text, quantity, unit);
          if (reading.ok) {
            expect(Number.isFinite(reading.value)).toBe(true);
            expect(Object.is(reading.value, -0)).toBe(false);
          } else {
            expect(reading.message).toMatch(/^expected /);
            expect(reading.from).toBeGreaterThanOrEqual(0);
            expect(reading.to).toBeGreaterThanOrEqual(reading.from);
            expect(reading.to).toBeLessThanOrEqual(text.length);
          }
        },
      ),
      { numRuns: runs(3000) },
    );
  });
});

describe('sums', () => {
  interface Sum {
    readonly text: string;
    readonly value: number;
  }

  /** Sums with every bracket written, and what they come to by JavaScript's own arithmetic on the same numbers. */
  const { sum } = fc.letrec<{ sum: Sum; leaf: Sum; pair: Sum }>((tie) => ({
    leaf: fc.integer({ min: 1, max: 99 }).map((value) => ({ text: String(value), value })),
    pair: fc.tuple(tie('sum'), fc.constantFrom('+', '−', '×', '÷'), tie('sum')).map(([a, sign, b]) => ({
      text: `(${a.text} ${sign} ${b.text})`,
      value:
        { '+': a.value + b.value, '−': a.value - b.value, '×': a.value * b.value, '÷': a.value / b.value }[sign] ?? NaN,
    })),
    sum: fc.oneof({ maxDepth: 4, depthSize: 'small' }, tie('leaf'), tie('pair')),
  }));

  test('come to what arithmetic says, in any unit', () => {
    fc.assert(
      fc.property(sum, fc.constantFrom(...entryUnits.length), ({ text, value }, unit) => {
        fc.pre(text.length < 100 && Number.isFinite(value) && Math.abs(value) < 1e9);
        const mm = value * unit.factor;
        // Twelve digits are kept; where terms cancel, what is left keeps the dust of the terms.
        const close = 1e-9 * Math.max(1, Math.abs(mm));
        expect(Math.abs(valueOf(text) - value)).toBeLessThanOrEqual(close);
        expect(Math.abs(valueOf(`${text} ${unit.names[0]}`) - mm)).toBeLessThanOrEqual(close);
      }),
    );
  });

  test('× binds before +, and equal signs from the left', () => {
    fc.assert(
      fc.property(fc.tuple(...[1, 2, 3].map(() => fc.integer({ min: 1, max: 50 }))), ([a = 1, b = 1, c = 1]) => {
        expect(valueOf(`${a} + ${b} × ${c}`)).toBe(a + b * c);
        expect(valueOf(`${a} − ${b} − ${c}`)).toBe(a - b - c);
        expect(valueOf(`${a} ÷ ${b} ÷ ${c}`)).toBeCloseTo(a / b / c, 9);
      }),
    );
  });
});

describe('what is shown reads back as the same value', () => {
  const { width: length } = outlines.rectangle;

  test('every unit under every name', () => {
    for (const [quantity, units] of Object.entries(entryUnits)) {
      for (const { names, factor, offset = 0 } of units) {
        for (const name of names) {
          const read = valueOf(`12.5 ${name}`, quantity as Quantity);
          expect(read, `${quantity} ${name}`).toBeCloseTo(12.5 * factor + offset, 9);
          expect(valueOf(`12.5${name.toUpperCase()}`, quantity as Quantity), name).toBe(read);
        }
      }
    }
  });

  test('tenths of a millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: -99999, max: 99999 }), (tenths) => {
        const mm = tenths / 10;
        expect(valueOf(lengthText(mm, 'mm'))).toBe(mm);
        expect(valueOf(lengthWithUnit(mm, { length: 'mm', fraction: null }), 'length', 'in')).toBe(mm);
      }),
    );
  });

  test('thousandths of an inch', () => {
    fc.assert(
      fc.property(fc.integer({ min: -99999, max: 99999 }), (thousandths) => {
        const mm = toMillimetres(thousandths / 1000, 'in');
        expect(valueOf(lengthText(mm, 'in'), 'length', 'in')).toBe(mm);
        expect(valueOf(lengthWithUnit(mm, { length: 'in', fraction: null }))).toBe(mm);
      }),
    );
  });

  test.each<Denominator>([8, 16, 32, 64])('fractions of %d', (fraction) => {
    fc.assert(
      fc.property(fc.integer({ min: -64 * 400, max: 64 * 400 }), (parts) => {
        const mm = toMillimetres(parts / fraction, 'in');
        const display = { length: 'in', fraction } as const;
        expect(valueOf(lengthText(mm, display), 'length', 'in')).toBe(mm);
        expect(valueOf(lengthWithUnit(mm, display))).toBe(mm);
        expect(entryValue(entryText(mm, length, 'in', fraction), length, 'in', false)).toBe(mm);
      }),
    );
  });
});
