import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listener } from '$lib/project/fields/listener.ts';
import { fieldOf } from '$lib/document/fields.ts';
import { stepSize, steppedText } from '$lib/document/stepSize.ts';

const keys = { plain: { shiftKey: false, altKey: false }, shift: { shiftKey: true, altKey: false }, alt: { shiftKey: false, altKey: true } }; // prettier-ignore
const sizes = (pointer: string, unit: 'mm' | 'in'): number[] =>
  Object.values(keys).map((held) => stepSize(fieldOf('number', pointer), unit, held));

describe('one press of an arrow key', () => {
  it.each([
    ['/layouts/0/listener/earHeight', 'mm', [1, 10, 0.1]],
    ['/layouts/0/listener/earHeight', 'in', [1 / 16, 1 / 2, 1 / 64]],
    ['/layouts/0/aim/tilt/degrees', 'mm', [0.5, 5, 0.05]],
    ['/layouts/0/aim/tilt/degrees', 'in', [0.5, 5, 0.05]],
    ['/layouts/0/stand/rods/count', 'mm', [1, 10, 1]],
  ] as const)('adds to %s in %s: alone, with Shift, with Alt', (pointer, unit, expected) => {
    expect(sizes(pointer, unit)).toEqual(expected);
  });

  it('goes there and back without dust, and stays within the range', () => {
    const { min, max } = listener.earHeight;
    fc.assert(
      fc.property(fc.integer({ min: min * 10, max: max * 10 }), fc.constantFrom(1, 10, 0.1, 1 / 16), (tenths, step) => {
        const up = Number(steppedText(tenths / 10, step, listener.earHeight));
        expect(up).toBeLessThanOrEqual(max);
        if (tenths / 10 + step <= max) expect(Number(steppedText(up, -step, listener.earHeight))).toBe(tenths / 10);
        expect(Number(steppedText(tenths / 10, -step, listener.earHeight))).toBeGreaterThanOrEqual(min);
      }),
    );
  });

  it('never shows a negative nothing', () => {
    expect(steppedText(1, -1, { min: -10, max: 10 })).toBe('0');
    expect(steppedText(-0.1, 0.1, { min: -10, max: 10 })).toBe('0');
  });
});
