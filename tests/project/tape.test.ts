import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tapeStep, toTape } from '$lib/project/tape.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { numberFrom } from '../numbers.ts';

const displays: readonly LengthDisplay[] = [
  { length: 'mm', fraction: null },
  { length: 'in', fraction: null },
  { length: 'in', fraction: 16 },
  { length: 'in', fraction: 64 },
];

test('a tape shows whole millimetres, fractions of an inch, or twentieths', () => {
  expect(displays.map(tapeStep)).toEqual([1, 25.4 / 20, 25.4 / 16, 25.4 / 64]);
  expect(toTape(549.6, { length: 'in', fraction: 16 })).toBe(549.275);
  expect(toTape(609.6, { length: 'in', fraction: 16 })).toBe(609.6);
});

test('what is brought to the tape is on it, at most a step away, on the side asked for; again changes nothing', () => {
  fc.assert(
    fc.property(numberFrom(-2000, 2000), fc.constantFrom(...displays), (mm, display) => {
      const step = tapeStep(display);
      for (const way of ['up', 'down', 'nearest'] as const) {
        const at = toTape(mm, display, way);
        expect(Math.abs(at / step - Math.round(at / step))).toBeLessThan(1e-6);
        // A millionth of a step counts as on the tape.
        expect(Math.abs(at - mm)).toBeLessThanOrEqual((way === 'nearest' ? step / 2 : step) + 1e-6 * step);
        if (way === 'up') expect(at).toBeGreaterThanOrEqual(mm - 1e-6 * step);
        if (way === 'down') expect(at).toBeLessThanOrEqual(mm + 1e-6 * step);
        expect(toTape(at, display, way)).toBe(at);
      }
    }),
  );
});

test('both sides of the middle come to mirrored places', () => {
  fc.assert(
    fc.property(numberFrom(0, 2000), fc.constantFrom(...displays), (mm, display) => {
      expect(toTape(-mm, display) + 0).toBe(-toTape(mm, display) + 0);
    }),
  );
});
