import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asCount, asDegrees, asFineMm, asMm, sentenceText } from '$lib/project/sentence.ts';
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
