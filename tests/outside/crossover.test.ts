import { describe, expect, test } from 'vitest';
import { speedOfSound } from '$lib/acoustics/air.ts';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { distance, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Crossover } from '$lib/project/project.ts';
import { angle, magnitude, over, plus } from '../acoustics/complex.ts';
import { highPass, lowPass } from '../acoustics/filters.ts';
import { placed, sumAsTheyStand, towered, twoWay } from '../acoustics/placed.ts';

const SPEED = speedOfSound(20);
const decibels = (ratio: number): number => 20 * Math.log10(ratio);

const sum = (crossover: Crossover, apart: number, head: Vec3) => sumAsTheyStand(crossover, towered(apart), head, SPEED);

/** A head so far off that the two paths are parallel, the angle over the level in radians. */
const farAway = (elevation: number): Vec3 => vec3(0, -1e9 * Math.cos(elevation), 1e9 * Math.sin(elevation));

// Poles and zeros of the two textbook alignments; the figures are those of scipy.signal.
describe('the two alignments at their crossover frequency', () => {
  test('Linkwitz-Riley of fourth order: each branch 6.0206 dB down, in phase, together 0 dB', () => {
    expect(decibels(magnitude(lowPass(4)))).toBeCloseTo(-6.0206, 4);
    expect(decibels(magnitude(highPass(4)))).toBeCloseTo(-6.0206, 4);
    expect(decibels(magnitude(plus(lowPass(4), highPass(4))))).toBeCloseTo(0, 12);
    expect(sum(twoWay(2500), 150, farAway(0)).sumLevel).toBeCloseTo(0, 12);
  });

  test('Butterworth of third order: each branch 3.0103 dB down, the high-pass a quarter turn late', () => {
    expect(decibels(magnitude(lowPass(3)))).toBeCloseTo(-3.0103, 4);
    expect(decibels(magnitude(highPass(3)))).toBeCloseTo(-3.0103, 4);
    expect(degrees(angle(lowPass(3)))).toBeCloseTo(-135, 10);
    expect(degrees(angle(over(highPass(3), lowPass(3))))).toBeCloseTo(-90, 10);
    expect(decibels(magnitude(plus(lowPass(3), highPass(3))))).toBeCloseTo(0, 12);
    expect(sum(twoWay(2500, 'quadrature'), 150, farAway(0)).sumLevel).toBeCloseTo(-3.0103, 4);
  });
});

// Two equal phasors, 20·lg|cos(φ/2)|: plain trigonometry.
test.each([
  [60, -1.2494],
  [90, -3.0103],
  [120, -6.0206],
])('two equal drivers %d° apart: %d dB re in phase', (phase, level) => {
  const late = (phase / 360) * 343.2;
  const drivers = [placed('tweeter', 'tweeter', 200, vec3(0, 0, 0)), placed('woofer', 'woofer', 100, vec3(0, late, 0))];
  const one = sumAsTheyStand(twoWay(1000), drivers, vec3(0, -1000, 0), SPEED);
  expect(degrees(one.phase)).toBeCloseTo(phase, 9);
  expect(one.sumLevel).toBeCloseTo(level, 4);
});

// The path d·sinθ to a distant point, after S. H. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", JAES
// 24(1), 1976 (the subject; the figures are worked out from the formula).
describe('drivers 150 mm apart, crossed at 2500 Hz, heard from far away', () => {
  const wavelength = 343200 / 2500;

  test('5° up: 13.0734 mm, 34.2833°, −0.3947 dB in phase', () => {
    const { pathDifference, phase, sumLevel } = sum(twoWay(2500), 150, farAway(radians(5)));
    expect(pathDifference).toBeCloseTo(13.0734, 4);
    expect(degrees(phase)).toBeCloseTo(34.2833, 4);
    expect(sumLevel).toBeCloseTo(-0.3947, 4);
  });

  test('in quadrature the lobe leans up, to the tweeter: +1.9404 dB 5° up and −3.5980 dB 5° down, re on the axis', () => {
    const level = (elevation: number): number =>
      sum(twoWay(2500, 'quadrature'), 150, farAway(radians(elevation))).sumLevel ?? NaN;
    expect(level(5) - level(0)).toBeCloseTo(1.9404, 4);
    expect(level(-5) - level(0)).toBeCloseTo(-3.598, 4);
  });

  test('in phase 3 dB down at sin θ = λ/4d, 13.226°, and silent at λ/2d, 27.232°', () => {
    const third = Math.asin(wavelength / 600);
    const silent = Math.asin(wavelength / 300);
    expect(degrees(third)).toBeCloseTo(13.226, 3);
    expect(degrees(silent)).toBeCloseTo(27.232, 3);
    for (const side of [1, -1]) {
      expect(sum(twoWay(2500), 150, farAway(side * third)).sumLevel).toBeCloseTo(-3.0103, 4);
      expect(sum(twoWay(2500), 150, farAway(side * silent)).sumLevel).toBeNull();
    }
  });
});

// Common practice, no source: a two-way with a 4-inch (102 mm) woofer crossed at 3,500 Hz, heard from about 914 mm.
describe('a small two-way crossed at 3,500 Hz', () => {
  // The centres as far apart as the woofer is wide, the head 914 mm straight in front of the tweeter.
  const head = vec3(0, -914, 51);
  const heard = sum(twoWay(3500), 102, head);

  test('the wave at the crossover is about 98 mm long, about the width of the woofer', () => {
    const wavelength = (heard.pathDifference / heard.phase) * 2 * Math.PI;
    expect(Math.abs(wavelength - 98)).toBeLessThan(0.5);
    expect(wavelength / 102).toBeGreaterThan(0.95);
    expect(wavelength / 102).toBeLessThan(1);
  });

  test('the woofer is √(914² + 102²) − 914 mm farther and the sum hardly suffers', () => {
    expect(heard.pathDifference).toBeCloseTo(Math.sqrt(914 ** 2 + 102 ** 2) - 914, 9);
    expect(heard.sumLevel).toBeCloseTo(decibels(Math.cos((Math.PI * 3500 * heard.pathDifference) / 343200)), 9);
    expect(heard.sumLevel).toBeGreaterThan(-0.2);
  });

  test('half a wave farther cancels, a whole one adds', () => {
    const wavelength = 343200 / 3500;
    const behind = (depth: number) => {
      const drivers = [
        placed('tweeter', 'tweeter', 200, vec3(0, 0, 0)),
        placed('woofer', 'woofer', 98, vec3(0, depth, 0)),
      ];
      const from = vec3(0, -914, 0);
      expect(distance(from, vec3(0, depth, 0))).toBeCloseTo(914 + depth, 9);
      return sumAsTheyStand(twoWay(3500), drivers, from, SPEED);
    };
    expect(behind(wavelength / 2).sumLevel).toBeNull();
    expect(behind(wavelength).sumLevel).toBeCloseTo(0, 9);
    expect(behind(wavelength).phase).toBeCloseTo(2 * Math.PI, 9);
  });
});
