import fc from 'fast-check';
import { expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { footprintOf } from '$lib/stand/footprint.ts';
import { fanArea, mm } from './stands.ts';

const toes = fc.double({ min: radians(-90), max: radians(90), noNaN: true });

it('lies square on the desk without toe', () => {
  expect(footprintOf({ x: 430, y: 300 }, 0, 'right', [-10, 200], 165)).toEqual([
    [512.5, 290],
    [512.5, 500],
    [347.5, 500],
    [347.5, 290],
  ]);
});

it('turns about the mark, the front towards the middle', () => {
  const [frontRight, rearRight, rearLeft, frontLeft] = footprintOf(
    { x: 400, y: 300 },
    radians(30),
    'right',
    [0, 200],
    100,
  );
  const [sin, cos] = [0.5, Math.sqrt(3) / 2];
  // Rearwards (sin, cos), inboard (−cos, sin).
  expect(frontRight).toEqual([expect.closeTo(400 + 50 * cos, 10), expect.closeTo(300 - 50 * sin, 10)]);
  expect(rearRight).toEqual([
    expect.closeTo(400 + 200 * sin + 50 * cos, 10),
    expect.closeTo(300 + 200 * cos - 50 * sin, 10),
  ]);
  expect(rearLeft).toEqual([
    expect.closeTo(400 + 200 * sin - 50 * cos, 10),
    expect.closeTo(300 + 200 * cos + 50 * sin, 10),
  ]);
  expect(frontLeft).toEqual([expect.closeTo(400 - 50 * cos, 10), expect.closeTo(300 + 50 * sin, 10)]);
});

it('is a counter-clockwise rectangle of the base’s size, and the left one mirrors the right one', () => {
  fc.assert(
    fc.property(
      mm(-2000, 2000),
      mm(-2000, 2000),
      toes,
      mm(-300, 300),
      mm(5, 900),
      mm(3, 900),
      (x, y, toe, front, length, width) => {
        const right = footprintOf({ x, y }, toe, 'right', [front, front + length], width);
        const left = footprintOf({ x: -x, y }, toe, 'left', [front, front + length], width);
        expect(fanArea(right) / (length * width)).toBeCloseTo(1, 9);
        expect(fanArea(left) / (length * width)).toBeCloseTo(1, 9);
        const [a = [0, 0], b = [0, 0], c = [0, 0], d = [0, 0]] = right;
        expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(length, 8);
        expect(Math.hypot(c[0] - b[0], c[1] - b[1])).toBeCloseTo(width, 8);
        [d, c, b, a].forEach(([u, v], i) => {
          expect(left[i]?.[0]).toBeCloseTo(-u, 9);
          expect(left[i]?.[1]).toBeCloseTo(v, 9);
        });
      },
    ),
  );
});
