import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixed } from '$lib/files/number.ts';

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

it.each([NaN, Infinity, -Infinity, 1e15])('refuses %s by name', (value) => {
  const message = `slice, width: expected a finite number of at most 15 digits, got ${value}`;
  expect(() => fixed(value, 'slice, width')).toThrow(message);
});
