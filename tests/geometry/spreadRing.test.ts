import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dot, length, subtract, vec3 } from '$lib/geometry/point.ts';
import { spreadRing } from '$lib/geometry/spreadRing.ts';
import { onCard } from '$lib/layout/passing.ts';
import { numberFrom } from '../numbers.ts';

test('is square to the axis, and on a card held up to it the ellipse itself', () => {
  fc.assert(
    fc.property(
      numberFrom(0, 2 * Math.PI),
      numberFrom(-1.4, 1.4),
      numberFrom(1, 80),
      numberFrom(0, 1),
      numberFrom(-1.5, 1.5),
      (bearing, rise, major, share, turn) => {
        const axis = vec3(Math.cos(bearing) * Math.cos(rise), Math.sin(bearing) * Math.cos(rise), Math.sin(rise));
        const at = vec3(10, -180, 445);
        const minor = major * share;
        const ring = spreadRing(at, axis, { major, minor, turn });
        const card = onCard(axis);
        let longest = 0;
        for (const point of ring) {
          const from = subtract(point, at);
          expect(Math.abs(dot(from, axis))).toBeLessThan(1e-9 * major);
          const [x, y] = card(from);
          // Along the longer axis, and square to it.
          const [along, aside] = [x * Math.cos(turn) + y * Math.sin(turn), y * Math.cos(turn) - x * Math.sin(turn)];
          expect((along / major) ** 2 + (minor > 1e-6 ? (aside / minor) ** 2 : 0)).toBeLessThan(1 + 1e-6);
          expect(Math.abs(aside)).toBeLessThan(minor + 1e-6);
          longest = Math.max(longest, length(from));
        }
        expect(longest).toBeCloseTo(major, 9);
      },
    ),
  );
});
