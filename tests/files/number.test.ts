import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixed, precise } from '$lib/files/number.ts';

const ordinary = fc.double({ noNaN: true, min: -1e9, max: 1e9 });
const plain = /^-?(?:0|[1-9]\d*)(?:\.\d*[1-9])?$/;

describe('numbers with fixed decimals', () => {
  it('drops dust, trailing zeros and the sign of zero', () => {
    expect(fixed(0.1 + 0.2, 'x')).toBe('0.3');
    expect(fixed(-0, 'x')).toBe('0');
    expect(fixed(-0.0004, 'x')).toBe('0');
    expect(fixed(1e-7, 'x')).toBe('0');
    expect(fixed(100, 'x')).toBe('100');
    expect(fixed(1200, 'x', 0)).toBe('1200');
    expect(fixed(-12.5, 'x')).toBe('-12.5');
  });

  it('is plain decimal text within half a step of the number', () => {
    fc.assert(
      fc.property(ordinary, (value) => {
        const text = fixed(value, 'x');
        expect(text).toMatch(plain);
        expect(text).not.toBe('-0');
        // Half a step, and what a double of 1e9 resolves (2e-7).
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.0005 + 2e-7);
      }),
    );
  });
});

describe('numbers with 16 digits', () => {
  it('keeps the bulge of a quarter arc whole', () => {
    // tan(π/8) = √2 − 1 = 0.41421356237309504880…, and √2 = 1.41421356237309504880…
    expect(precise(Math.tan(Math.PI / 8), 'bulge')).toBe('0.414213562373095');
    expect(precise(Math.SQRT2, 'bulge')).toBe('1.414213562373095');
    expect(precise(1 / 3, 'bulge')).toBe('0.3333333333333333');
    expect(precise(1.5e-7, 'bulge')).toBe('0.00000015');
    expect(precise(-0, 'bulge')).toBe('0');
    expect(precise(1, 'bulge')).toBe('1');
  });

  it('is plain decimal text within a unit in the 16th digit', () => {
    const value = fc
      .oneof(ordinary, fc.double({ noNaN: true, min: -1e-5, max: 1e-5 }))
      .filter((number) => Math.abs(number) > 1e-80);
    fc.assert(
      fc.property(value, (number) => {
        const text = precise(number, 'x');
        expect(text).toMatch(plain);
        expect(Math.abs(Number(text) - number)).toBeLessThanOrEqual(Math.abs(number) * 1e-15);
      }),
    );
  });
});

it.each([NaN, Infinity, -Infinity, 1e15])('refuses %s by name', (value) => {
  const message = `slice, width: expected a finite number of at most 15 digits, got ${value}`;
  expect(() => fixed(value, 'slice, width')).toThrow(message);
  expect(() => precise(value, 'slice, width')).toThrow(message);
});
