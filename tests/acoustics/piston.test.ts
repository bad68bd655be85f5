import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FREQUENCIES, frequencies } from '$lib/acoustics/grid.ts';
import { beamHalfAngle, dropArgument, filledBehind, forwardSine, pistonLevel } from '$lib/acoustics/piston.ts';
import { baffleStep, bodyCorner, cornerBehind, shadow } from '$lib/acoustics/shadow.ts';
import { addWave, silence } from '$lib/acoustics/wave.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(500) };

test('no louder off the axis than on it, and behind the baffle as in its plane', () => {
  fc.assert(
    fc.property(numberFrom(0, 60), numberFrom(0, Math.PI), (size, angle) => {
      const level = pistonLevel(size, angle);
      expect(level).toBeLessThanOrEqual(0);
      expect(level).toBeGreaterThanOrEqual(-120);
      if (angle > Math.PI / 2) expect(level).toBe(pistonLevel(size, Math.PI / 2));
      expect(pistonLevel(size, 0)).toBe(0);
    }),
    RUNS,
  );
});

test('the edge of the beam is as far down as asked, and there is none for a piston that never beams so', () => {
  fc.assert(
    fc.property(numberFrom(0.01, 60), numberFrom(0.1, 20), (size, drop) => {
      const angle = beamHalfAngle(size, drop);
      if (angle === null) {
        expect(size).toBeLessThan(dropArgument(drop));
        expect(pistonLevel(size, Math.PI / 2)).toBeGreaterThan(-drop);
      } else {
        expect(pistonLevel(size, angle)).toBeCloseTo(-drop, 8);
      }
    }),
    RUNS,
  );
});

test('a drop that is none is refused', () => {
  expect(() => dropArgument(-1)).toThrow('expected a drop over 0 dB, got -1');
});

// Common practice, no source: the corner of a baffle W wide is c/(π·W).
test('a body counts from c/(π·W): half the power there, nothing lost far below, 6 dB an octave far above', () => {
  const corner = bodyCorner(200, 343.2);
  expect(corner).toBeCloseTo(343.2 / (Math.PI * 0.2), 9);
  expect(shadow(corner, corner)).toBeCloseTo(Math.SQRT1_2, 12);
  expect(shadow(corner / 1000, corner)).toBeCloseTo(1, 5);
  expect(shadow(2000 * corner, corner) / shadow(1000 * corner, corner)).toBeCloseTo(0.5, 6);
});

test('behind the baffle the loss sets in at its plane without a jump', () => {
  expect(cornerBehind(500, 0.5)).toBe(Infinity);
  expect(cornerBehind(500, Math.PI / 2)).toBe(Infinity);
  expect(shadow(20000, cornerBehind(500, Math.PI / 2 + 1e-6))).toBeCloseTo(1, 6);
  expect(cornerBehind(500, Math.PI)).toBe(500);
});

test('the step of a baffle goes from −6 dB to 0 dB and is half way, −3 dB, at its corner', () => {
  expect(baffleStep(1e-3, 500)).toBeCloseTo(0.5, 9);
  expect(baffleStep(500, 500)).toBeCloseTo(Math.SQRT1_2, 12);
  expect(baffleStep(5e7, 500)).toBeCloseTo(1, 9);
});

test('behind the baffle no direction has a null, and at its plane nothing jumps', () => {
  const branch = { re: new Float64Array(FREQUENCIES).fill(1), im: new Float64Array(FREQUENCIES) };
  const levelTowards = (offAxis: number, radius: number): Float64Array => {
    const sum = silence();
    const argument = ((2 * Math.PI) / 343200) * radius * forwardSine(offAxis);
    addWave(sum, {
      gain: 1,
      turn: 0,
      argument,
      filled: filledBehind(offAxis),
      behind: 0,

      branch,
      bent: null,
    });
    return sum.re.map((re, i) => Math.hypot(re, sum.im[i] ?? 0));
  };
  fc.assert(
    fc.property(numberFrom((100 * Math.PI) / 180, Math.PI), numberFrom(20, 90), (angle, radius) => {
      const found = levelTowards(angle, radius);
      // Over the lobes the curve of √(8/π)/x^1.5, at the least 8 dB under it.
      found.forEach((size, i) => {
        const x = ((2 * Math.PI) / 343200) * radius * (frequencies[i] ?? NaN);
        if (x > 3) expect(20 * Math.log10(size / (Math.sqrt(8 / Math.PI) / x ** 1.5))).toBeGreaterThan(-9);
        expect(size).toBeLessThanOrEqual(1 + 1e-9);
      });
    }),
    { numRuns: runs(100) },
  );
  const [before, after] = [-1e-12, 1e-12].map((by) => levelTowards(Math.PI / 2 + by, 60));
  before?.forEach((size, i) => expect(Math.abs(size - (after?.[i] ?? NaN))).toBeLessThan(1e-5));
});
