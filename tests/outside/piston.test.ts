import { describe, expect, test } from 'vitest';
import { jinc } from '$lib/acoustics/bessel.ts';
import { beamHalfAngle, dropArgument, pistonLevel, pistonSize } from '$lib/acoustics/piston.ts';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { rootBetween } from '$lib/geometry/root.ts';
import { magnitude, plus, type Complex } from '../acoustics/complex.ts';

/** Bessel function of the first kind and first order, J₁(x), out of the directivity 2·J₁(x)/x. */
const besselJ1 = (x: number): number => (x / 2) * jinc(x);

const decibels = (ratio: number): number => 20 * Math.log10(Math.abs(ratio));

// scipy.special.j1, as 2·j1(x)/x.
test.each([
  [0.001, 0.9999998750000053],
  [0.1, 0.9987505207248399],
  [1, 0.8801011714898671],
  [3.5, 0.07850144420704411],
  [5, -0.13103165503658612],
  [7.5, 0.036066247354588146],
  [10, 0.008694549233772282],
  [12.49, -0.02675379074121996],
  [12.5, -0.02647740873836153],
  [15, 0.027347205148469705],
  [20, 0.006683312417585021],
  [40, 0.00630191590187925],
  [50, -0.0039004731250070037],
  [60, 0.0015532794586055408],
  [183.1, 6.7040438179519e-5],
])('2·J₁(x)/x at %d is scipy’s', (x, value) => {
  expect(Math.abs(jinc(x) - value)).toBeLessThan(1e-12);
});

// Computed with scipy.special.j1; the first null also in Beranek & Mellow, "Acoustics", eq. 13.102, as quoted.
describe('the circular piston', () => {
  test('half power at x = 1.6163399483, half pressure at 2.2150893677', () => {
    expect(dropArgument(10 * Math.log10(2))).toBeCloseTo(1.6163399483, 9);
    expect(dropArgument(20 * Math.log10(2))).toBeCloseTo(2.2150893677, 9);
  });

  test('3 dB down at 1.6137411964, 6 dB at 2.2117854451', () => {
    expect(dropArgument(3)).toBeCloseTo(1.6137411964, 9);
    expect(dropArgument(6)).toBeCloseTo(2.2117854451, 9);
  });

  test('nulls at 3.8317059702, 7.0155866698 and 10.1734681351', () => {
    for (const zero of [3.8317059702, 7.0155866698, 10.1734681351])
      expect(rootBetween(besselJ1, zero - 0.5, zero + 0.5)).toBeCloseTo(zero, 9);
  });

  test('side lobes −17.5701 dB at 5.135622 and −23.8112 dB at 8.417244', () => {
    for (const [x, level] of [
      [5.135622, -17.5701],
      [8.417244, -23.8112],
    ] as const) {
      expect(decibels(jinc(x))).toBeCloseTo(level, 4);
      for (const beside of [x - 1e-3, x + 1e-3]) expect(Math.abs(jinc(beside))).toBeLessThan(Math.abs(jinc(x)));
    }
  });

  test.each([
    [0.5, -0.2729],
    [1, -1.1093],
    [2, -4.7806],
    [3, -12.9163],
  ])('at x = %d: %d dB', (x, level) => {
    expect(pistonLevel(x, Math.PI / 2)).toBeCloseTo(level, 4);
  });

  test('25 mm at 15 kHz: ka 3.4327, half power at 28.09°, −0.872 dB at 15° and −3.423 dB at 30°', () => {
    const size = pistonSize(12.5, 15000, 343.2);
    expect(size).toBeCloseTo(3.4327, 4);
    expect(degrees(beamHalfAngle(size, 10 * Math.log10(2)) ?? NaN)).toBeCloseTo(28.09, 2);
    expect(pistonLevel(size, radians(15))).toBeCloseTo(-0.872, 3);
    expect(pistonLevel(size, radians(30))).toBeCloseTo(-3.423, 3);
  });
});

/** Mean of the power over the half space in front, by Simpson's rule over the angle. */
function powerInFront(size: number): number {
  const steps = 2000;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const angle = ((Math.PI / 2) * i) / steps;
    const weight = i === 0 || i === steps ? 1 : i % 2 === 0 ? 2 : 4;
    sum += weight * 10 ** (pistonLevel(size, angle) / 10) * Math.sin(angle);
  }
  return (sum * Math.PI) / 2 / steps / 3;
}

// All sound goes into the half space in front: DI = 10·lg(2/∫D² sin θ dθ). Computed with scipy.
test.each([
  [1, 3.7338],
  [2, 5.8795],
  [5, 14.0173],
])('energy: ka %d gives a directivity index of %d dB', (size, index) => {
  expect(10 * Math.log10(2 / powerInFront(size))).toBeCloseTo(index, 4);
  // The closed form of the same integral, (ka)²/(1 − J₁(2ka)/ka), from any textbook of acoustics.
  expect(2 / powerInFront(size)).toBeCloseTo(size ** 2 / (1 - besselJ1(2 * size) / size), 6);
});

/** A disc of many small sources, heard from far away: the waves added one by one. */
function discOfSources(size: number, offAxis: number): number {
  const rings = 400;
  let sum: Complex = [0, 0];
  for (let ring = 0; ring < rings; ring++) {
    const radius = (ring + 0.5) / rings;
    const round = 240;
    for (let i = 0; i < round; i++) {
      const phase = size * Math.sin(offAxis) * radius * Math.cos((2 * Math.PI * i) / round);
      sum = plus(sum, [(radius * Math.cos(phase)) / round, (radius * Math.sin(phase)) / round]);
    }
  }
  return (2 * magnitude(sum)) / rings;
}

test.each([
  [0.7, 40],
  [3.4, 28],
  [9, 50],
  [18, 65],
])('the waves of a disc of ka %d add to the same at %d°', (size, angle) => {
  const level = pistonLevel(size, radians(angle));
  // Rings of finite width: the middle rule errs by (x/rings)²/24 of the whole.
  expect(Math.abs(10 ** (level / 20) - discOfSources(size, radians(angle)))).toBeLessThan(1e-4);
});
