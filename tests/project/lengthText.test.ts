import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleText, lengthText, unitWord } from '$lib/project/lengthText.ts';

describe('lengthText', () => {
  it('gives millimetres at most one decimal and drops trailing zeros', () => {
    expect([1400, 12.34, 12.04, 0.25, -430.06].map((mm) => lengthText(mm, 'mm'))).toEqual([
      '1400',
      '12.3',
      '12',
      '0.3',
      '−430.1',
    ]);
  });

  it('gives inches three decimals', () => {
    expect([25.4, 600, 0].map((mm) => lengthText(mm, 'in'))).toEqual(['1.000', '23.622', '0.000']);
  });

  it('never shows a negative nothing, and never strays by more than half of its last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: -20000, max: 20000, noNaN: true }), (mm) => {
        for (const unit of ['mm', 'in'] as const) {
          const text = lengthText(mm, unit).replace('−', '-');
          expect(text).not.toMatch(/^-0(\.0+)?$/);
          const shown = unit === 'mm' ? Number(text) : Number(text) * 25.4;
          expect(Math.abs(shown - mm)).toBeLessThanOrEqual((unit === 'mm' ? 0.05 : 0.0005 * 25.4) + 1e-9);
        }
      }),
    );
  });
});

describe('angleText', () => {
  it('gives at most two decimals and the sign of degrees', () => {
    expect([60, 14.704, -6, -0.001].map(angleText)).toEqual(['60°', '14.7°', '−6°', '0°']);
  });
});

describe('unitWord', () => {
  it('says the unit', () => {
    expect([unitWord('mm'), unitWord('in')]).toEqual(['millimetres', 'inches']);
  });
});
