import { expect, test } from 'vitest';
import { hearingAt, HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { imageReadings, levelForShift, tangentLaw } from '$lib/acoustics/phantom.ts';
import { radians } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { placed } from '../acoustics/placed.ts';

/** Base 1.0 m, head 0.866 m in front of it, all at one height. */
const depth = 500 * Math.sqrt(3);
const voice = (x: number) => ({
  forward: vec3(-Math.sign(x) * 0.5, -Math.sqrt(0.75), 0),
  aimedPoint: vec3(x, depth, 0),
  drivers: [placed('tweeter', 'tweeter', 200, vec3(x, depth, 0))],
});
const hear = hearingAt(
  { crossovers: [], drivers: [], designPoint: { rule: 'none' } },
  { left: voice(-500), right: voice(500) },
  vec3(0, 0, 0),
  343.2,
);

// Computed with c = 343.2 m/s.
test.each([
  [10, 29.136, 0.0869],
  [50, 145.551, 0.4336],
  [100, 290.286, 0.8628],
])('a head %d mm aside hears %d µs and %d dB', (aside, time, level) => {
  const heard = hear(vec3(aside, 0, 0));
  expect(heard.time).toBeCloseTo(time, 3);
  expect(heard.level).toBeCloseTo(level, 4);
});

/** Both loudspeakers in one place, pointing at the listener along −y: their treble is one piston's, 25 mm across. */
const one = { ...voice(500), forward: vec3(0, -1, 0) };
const trebleAt = (sine: number): number => {
  const hearOne = hearingAt(
    { crossovers: [], drivers: [], designPoint: { rule: 'none' } },
    { left: one, right: one },
    vec3(0, 0, 0),
    343.2,
  );
  return hearOne(vec3(500 + 700 * sine, depth - 700 * Math.sqrt(1 - sine ** 2), 0)).treble;
};
const size = (2 * Math.PI * 10_000 * 0.0125) / 343.2;

// 2·J1(x)/x with x = ka·sin θ (computed with scipy.special.j1).
test.each([
  [0.5, -0.2729],
  [1, -1.1093],
  [1.6137411964, -3],
  [2, -4.7806],
])('a tweeter off its axis by x = %d is down %d dB', (x, level) => {
  expect(trebleAt(x / size)).toBeCloseTo(level, 4);
});

// Tangent law for a pair at ±30°, computed.
test.each([
  [5, 2.6529],
  [10, 5.4803],
  [15, 8.7298],
])('the tangent law moves the image %d° by %d dB', (angle, level) => {
  expect(tangentLaw(radians(angle), radians(30))).toBeCloseTo(level, 4);
});

test('the tangent law is within a third of what listeners said (Leakey, de Boer: quoted, read off graphs)', () => {
  for (const [level, angle] of Object.values(imageReadings).flat()) {
    const law = tangentLaw(radians(angle), radians(30));
    expect(law).toBeGreaterThan(level);
    expect(law).toBeLessThan(level * 1.5);
  }
});

test('the level allowed between the sides shifts the image by 1° at most (Mills 1958, quoted)', () => {
  expect(HEAD_LIMITS.level.limit).toBe(levelForShift(radians(1)));
  // de Boer's first reading, 4.5 dB for 10°, is the steepest; the tangent law allows 0.525 dB.
  expect(HEAD_LIMITS.level.limit).toBeCloseTo(0.45, 9);
  expect(HEAD_LIMITS.level.limit).toBeLessThan(tangentLaw(radians(1), radians(30)));
});
