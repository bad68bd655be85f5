import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  asAngle,
  asCount,
  asDegrees,
  asFineMm,
  asFixed,
  asLevel,
  asMm,
  asTyped,
  asUnit,
  bare,
  capital,
  distinct,
  joined,
  needs,
  onPage,
  plainText,
  says,
  sentenceText,
  sizeOf,
  type Piece,
} from '$lib/project/sentence.ts';
import { lengthWithUnit } from '$lib/project/lengthText.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { numberFrom } from '../numbers.ts';

const said = {
  template: 'Turn {rods} rods of {thin} by {turn} over {long}.',
  quantities: { rods: asCount(2), thin: asFineMm(6.35), turn: asDegrees(-12.5), long: asMm(304.8) },
};

test.each<[LengthDisplay, string]>([
  [{ length: 'mm', fraction: null }, 'Turn 2 rods of 6.35\u202fmm by −12.5° over 304.8\u202fmm.'],
  [{ length: 'in', fraction: null }, 'Turn 2 rods of 0.250″ by −12.5° over 12.000″.'],
  [{ length: 'in', fraction: 16 }, 'Turn 2 rods of 0.250″ by −12.5° over 12″.'],
])('shown in %j: %s', (display, text) => {
  expect(sentenceText(said, display)).toBe(text);
});

test('in inches nothing is left in millimetres, and the other way round', () => {
  fc.assert(
    fc.property(numberFrom(0, 500), numberFrom(0, 5), (long, thin) => {
      const one = { template: '{long} and {thin}', quantities: { long: asMm(long), thin: asFineMm(thin) } };
      expect(sentenceText(one, { length: 'in', fraction: 8 })).not.toContain('mm');
      expect(sentenceText(one, { length: 'mm', fraction: null })).not.toContain('″');
    }),
  );
});

test('a place without a quantity is a mistake', () => {
  expect(() => sentenceText({ template: '{wide}', quantities: {} }, { length: 'mm', fraction: null })).toThrow(
    'the sentence has no quantity for {wide}',
  );
});

const inches = { length: 'in', fraction: null } as const;
const eighths = { length: 'in', fraction: 8 } as const;

test('what is needed is told in the set form to a terminal, and on a page as a person would say it', () => {
  const fault = needs(
    says`a slot with ${asTyped(6)} of wood over it`,
    asTyped(2),
    says`make it ${asTyped(4)} shallower`,
  );
  expect(plainText(fault)).toBe('expected a slot with 6 mm of wood over it, got 2 mm: make it 4 mm shallower');
  expect(sentenceText(fault, { length: 'mm', fraction: null })).toBe(
    'Needs a slot with 6\u202fmm of wood over it, not 2\u202fmm: make it 4\u202fmm shallower',
  );
  expect(sentenceText(needs('at most 8 slices', 9), inches)).toBe('Needs at most 8 slices, not 9');
  // Within another sentence as well.
  const within = says`left: ${onPage('expected no stop, got one', 'Takes no stop')}`;
  expect([plainText(within), sentenceText(within, inches)]).toEqual([
    'left: expected no stop, got one',
    'left: Takes no stop',
  ]);
});

describe('a quantity', () => {
  test.each<[string, Piece, string, string]>([
    ['a length', asMm(25.44), '25.4 mm', '1.002″'],
    ['a fine length', asFineMm(3.048), '3.05 mm', '0.120″'],
    ['a length as typed', asTyped(0.149), '0.149 mm', '0.006″'],
    ['a length with zeros at its end', asFixed(-25.4, 3), '-25.400 mm', '−1.000″'],
    ['a length that leaves its unit to the next', bare(asMm(-25.4)), '-25.4', '−1.000″'],
    ['an angle', asAngle(-12.34), '-12.3°', '−12.3°'],
    ['an angle to set', asDegrees(12.346), '12.35°', '12.35°'],
    ['the size of an angle', sizeOf(asAngle(-12.34)), '12.3°', '12.3°'],
    ['nothing, from below', asAngle(-0.01), '0°', '0°'],
    ['a low frequency', asUnit(440.4, 'Hz'), '440 Hz', '440\u202fHz'],
    ['a high frequency', asUnit(2345, 'Hz'), '2.35 kHz', '2.35\u202fkHz'],
    ['a level', asLevel(-3.04), '-3 dB', '−3\u202fdB'],
    ['a time', asUnit(99.6, 'µs'), '100 µs', '100\u202fµs'],
    ['a delay', asUnit(1.234, 'ms'), '1.23 ms', '1.23\u202fms'],
    ['a push', asUnit(1.44, 'N'), '1.4 N', '1.4\u202fN'],
    ['a share', asUnit(1.84, '%'), '1.8 %', '1.8\u202f%'],
    ['a ratio', asUnit(0.256, 'ratio'), '0.26', '0.26'],
    ['a count', asCount(12), '12', '12'],
    ['words', '{0} of 3 mm', '{0} of 3 mm', '{0} of 3 mm'],
  ])('%s is told in a file and on a page', (_, piece, plain, shown) => {
    expect(plainText(says`a ${piece} b`)).toBe(`a ${plain} b`);
    expect(sentenceText(says`a ${piece} b`, inches)).toBe(`a ${shown} b`);
  });

  test('of length is a fraction where those are shown, unless it is fine', () => {
    expect(sentenceText(says`${asMm(25.4)} and ${asMm(30)} and ${asFineMm(30)}`, eighths)).toBe(
      '1″ and ≈\u202f1\u00a01/8″ and 1.181″',
    );
  });

  test('of length is turned, whatever it is', () => {
    fc.assert(
      fc.property(numberFrom(-9999, 9999), (mm) => {
        expect(sentenceText(says`a ${asMm(mm)} b`, eighths)).toBe(`a ${lengthWithUnit(mm, eighths)} b`);
      }),
    );
  });
});

describe('sentences', () => {
  test('lie within sentences, a bare number among them', () => {
    const inner = says`${2} rods of ${asMm(6)}`;
    expect(plainText(says`Take ${inner}, then ${joined([inner, 'glue'], ' or ')}.`)).toBe(
      'Take 2 rods of 6 mm, then 2 rods of 6 mm or glue.',
    );
  });

  test('begin with a capital, whatever they begin with', () => {
    expect(plainText(capital(says`sit down`))).toBe('Sit down');
    expect(plainText(capital(joined([says`sit ${asMm(3)}`, 'stand'], ', or ')))).toBe('Sit 3 mm, or stand');
    expect(plainText(capital(says`${'words'} first`))).toBe('Words first');
    expect(plainText(capital(says`${asMm(3)} first`))).toBe('3 mm first');
  });

  test('are told once where they say the same', () => {
    expect(distinct([says`a ${asMm(3)}`, 'b', says`a ${asMm(3.01)}`, says`a ${asMm(4)}`]).map(plainText)).toEqual([
      'a 3 mm',
      'b',
      'a 4 mm',
    ]);
  });
});
