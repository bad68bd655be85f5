import { describe, expect, test } from 'vitest';
import { vec3 } from '$lib/geometry/point.ts';
import { reflections, wideDesk } from '../acoustics/placed.ts';

type Reflection = ReturnType<typeof reflections>[number];

const SPEED = 343.2;
const desk = wideDesk(0);

const found = (list: readonly Reflection[], surface: Reflection['surface']): Reflection => {
  const one = list.find((each) => each.surface === surface);
  if (!one) throw new Error(`expected a reflection in the ${surface}`);
  return one;
};

/** Source `gap` mm in front of the wall, the head a metre further on the wall's normal: Δ is twice the gap. */
const wallAt = (gap: number): Reflection =>
  found(reflections(desk, vec3(0, 5000 - gap, 300), vec3(0, 4000 - gap, 300), SPEED), 'wall:behind');

// The image source of textbook acoustics, worked out apart from this code with numpy; c = 343.2 m/s, lengths in metres.
describe('desk bounce', () => {
  test.each([
    { h1: 0.2, h2: 0.45, r: 0.8, path: 0.192624, delay: 0.56126, notch: 890.856, level: -1.7968, point: 0.24615 },
    { h1: 0.15, h2: 0.45, r: 0.7, path: 0.160377, delay: 0.4673, notch: 1069.978, level: -1.6599, point: 0.175 },
    { h1: 0.25, h2: 0.48, r: 0.9, path: 0.229912, delay: 0.66991, notch: 746.374, level: -1.9208, point: 0.30822 },
  ])('source $h1 m, ear $h2 m, $r m across', ({ h1, h2, r, path, delay, notch, level, point }) => {
    const source = vec3(400, 2000, 1000 * h1);
    // Across at the angle of a 3-4-5 triangle, so that both axes take part.
    const head = vec3(400 - 600 * r, 2000 - 800 * r, 1000 * h2);
    const top = found(reflections(desk, source, head, SPEED), 'desk');
    expect(top.pathDifference / 1000).toBeCloseTo(path, 6);
    expect(top.delay).toBeCloseTo(delay, 5);
    expect(top.firstNotch).toBeCloseTo(notch, 3);
    expect(top.relativeLevel).toBeCloseTo(level, 4);
    expect(Math.hypot(top.point.x - source.x, top.point.y - source.y) / 1000).toBeCloseTo(point, 5);
    expect(top.lands).toBe(true);
  });
});

// F. A. Everest, K. C. Pohlmann, "Master Handbook of Acoustics".
describe('one reflection in the handbook', () => {
  test.each([
    [0.1, 5000],
    [1, 500],
  ])('%d ms late: the first notch at %d Hz', (delay, notch) => {
    const wall = wallAt((delay * SPEED) / 2);
    expect(wall.delay).toBeCloseTo(delay, 12);
    expect(wall.firstNotch).toBeCloseTo(notch, 8);
  });

  test('direct 1.0 ft, reflected 10.1 ft: 20.09 dB down', () => {
    const [direct, reflected] = [1.0 * 304.8, 10.1 * 304.8];
    const height = Math.sqrt(reflected ** 2 - direct ** 2) / 2;
    const top = found(reflections(desk, vec3(0, 1000, height), vec3(direct, 1000, height), SPEED), 'desk');
    expect(top.pathDifference).toBeCloseTo(reflected - direct, 9);
    expect(top.relativeLevel).toBeCloseTo(-20.09, 2);
  });
});

// The c/(4d) rule of tutorials on loudspeakers near a wall, which print "about 100 Hz" for 0.86 m.
test('0.86 m in front of the wall, heard along its normal: first notch c/(4d), about 100 Hz', () => {
  const { firstNotch } = wallAt(860);
  expect(firstNotch).toBeCloseTo(99.767, 3);
  expect(firstNotch).toBeCloseTo(343200 / (4 * 860), 9);
});
