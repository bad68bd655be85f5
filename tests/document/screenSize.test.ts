import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ratioOf, screenRatios, sizeOf } from '$lib/document/screenSize.ts';
import { numberFrom } from '../numbers.ts';

const now = { width: 600, height: 340 };

// Width and height of a diagonal d and sides a : b are d·a/√(a² + b²) and d·b/√(a² + b²), computed.
test.each([
  [24, '16:9', 531.312, 298.863],
  [27, '16:9', 597.727, 336.221],
  [24, '16:10', 516.94, 323.087],
  [34, '21:9', 796.62, 333.469],
  [49, '32:9', 1198.115, 336.97],
  [28.2, '3:2', 595.981, 397.321],
])('%d in of %s are %d × %d mm', (inches, ratio, width, height) => {
  expect(sizeOf(inches * 25.4, ratio, now)).toEqual({ width, height });
});

test('keeps the shape that a screen has where that is none of those sold', () => {
  const { width, height } = sizeOf(1000, null, { width: 700, height: 700 });
  expect([width, height]).toEqual([707.107, 707.107]);
  expect(ratioOf(700, 700)).toBeNull();
});

test('a screen of a diagonal and a shape has that diagonal and that shape', () => {
  fc.assert(
    fc.property(numberFrom(250, 1500), fc.constantFrom(...screenRatios), (diagonal, [name]) => {
      const { width, height } = sizeOf(diagonal, name, now);
      // Sides to a thousandth of a millimetre.
      expect(Math.abs(Math.hypot(width, height) - diagonal)).toBeLessThan(0.001);
      expect(ratioOf(width, height)).toBe(name);
    }),
  );
});
