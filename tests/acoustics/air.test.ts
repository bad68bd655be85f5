import fc from 'fast-check';
import { expect, test } from 'vitest';
import { speedOfSound } from '$lib/acoustics/air.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(500) };

test('warmer air is faster, and the speed is finite and positive over the whole range of a project', () => {
  fc.assert(
    fc.property(numberFrom(-30, 59), numberFrom(0.001, 1), (temperature, step) => {
      const speed = speedOfSound(temperature);
      expect(speed).toBeGreaterThan(300);
      expect(speedOfSound(temperature + step)).toBeGreaterThan(speed);
    }),
    RUNS,
  );
});

test('the square of the speed is proportional to the absolute temperature', () => {
  fc.assert(
    fc.property(numberFrom(-30, 60), (temperature) => {
      const ratio = (speedOfSound(temperature) / speedOfSound(0)) ** 2;
      expect(ratio).toBeCloseTo((temperature + 273.15) / 273.15, 12);
    }),
    RUNS,
  );
});
