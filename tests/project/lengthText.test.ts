import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryText } from '$lib/project/entry.ts';
import { lengthText, lengthWithUnit } from '$lib/project/lengthText.ts';
import { placement, toe } from '$lib/project/fields/aim.ts';
import { outlines } from '$lib/project/fields/desk.ts';
import { stock } from '$lib/project/fields/stock.ts';
import { readEntry } from '$lib/project/readEntry.ts';
import type { Denominator, LengthDisplay } from '$lib/project/units.ts';
import { numberFrom } from '../numbers.ts';

const inches = (fraction: LengthDisplay['fraction']): LengthDisplay => ({ length: 'in', fraction });

describe('a length that is shown', () => {
  test.each<[number, LengthDisplay, string]>([
    [476.25, { length: 'mm', fraction: 16 }, '476.3\u202fmm'],
    [476.25, inches(null), '18.750″'],
    [476.25, inches(8), '18\u00a03/4″'],
    [-476.25, inches(64), '−18\u00a03/4″'],
    [25.4, inches(32), '1″'],
    [3.175, inches(8), '1/8″'],
    [3.05, inches(8), '≈\u202f1/8″'],
    [3.05, inches(64), '≈\u202f1/8″'],
    [0.396875, inches(64), '1/64″'],
    [0, inches(16), '0″'],
    [0.1, inches(16), '≈\u202f0″'],
    [-0.1, inches(16), '≈\u202f0″'],
    [-0.01, { length: 'mm', fraction: null }, '0\u202fmm'],
    [-0.001, inches(null), '0.000″'],
    [304.75, inches(8), '≈\u202f12″'],
  ])('%d mm as %j: %j', (mm, display, text) => {
    expect(lengthWithUnit(mm, display)).toBe(text);
  });

  test('a fraction is the nearest one, reduced, and says when it was rounded', () => {
    fc.assert(
      fc.property(numberFrom(-5000, 5000), fc.constantFrom<Denominator>(8, 16, 32, 64), (mm, fraction) => {
        const text = lengthText(mm, inches(fraction));
        const [, over = '0', under = '1'] = /(\d+)\/(\d+)$/.exec(text) ?? [];
        expect(Number(over) === 0 || Number(over) % 2 === 1).toBe(true);
        expect(fraction % Number(under)).toBe(0);
        const shown = readEntry(text.replace('≈', ''), 'length', 'in');
        const off = Math.abs((shown.ok ? shown.value : NaN) - mm);
        // Half of one part of the inch, and the twelve digits that a typed length keeps.
        expect(off).toBeLessThanOrEqual(25.4 / fraction / 2 + 1e-8);
        expect(text.startsWith('≈')).toBe(off > 1e-6);
      }),
    );
  });

  test('a field shows a fraction only where it is exact', () => {
    expect(entryText(476.25, outlines.rectangle.width, 'in', 8)).toBe('18 3/4');
    expect(entryText(-476.25, placement.right.x, 'in', 8)).toBe('-18 3/4');
    expect(entryText(3.05, stock.thickness, 'in', 64)).toBe('0.1201');
    expect(entryText(476.25, outlines.rectangle.width, 'mm', 8)).toBe('476.25');
    expect(entryText(12.5, toe.degrees, 'in', 8)).toBe('12.5');
  });
});
