import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { buildStand, type StandBody } from '$lib/stand/build.ts';
import { faultLine } from '$lib/project/fault.ts';
import { plain } from '../stand/stands.ts';

const INCH = 25.4;

function standOf(
  size: { width: number; depth: number; tilt: number; lift: number },
  thickness = 3,
  density = 750,
): StandBody {
  const stance = { side: 'right' as const, mark: vec3(0, 0, 0), toe: 0, tilt: size.tilt, lift: size.lift };
  const outcome = buildStand(stance, size, { ...plain, rods: null }, { name: 'board', thickness, density });
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  return outcome.value;
}

// Sine bar of 5 inches, heights as machinists' handbooks print them; 10° computed from the same rule, rise = length · sin.
describe('the rise of a wedge as long as a 5-inch sine bar', () => {
  it.each([
    ['34° 25′', 34 + 25 / 60, 2.826],
    ['27°', 27, 2.27],
    ['18°', 18, 1.545],
    ['10°', 10, 0.8682],
  ])('is the sine bar’s height at %s', (_, angle, height) => {
    for (const sign of [1, -1]) {
      const stand = standOf({ width: 100, depth: 5 * INCH, tilt: sign * radians(angle), lift: 12 });
      const rise = (sign * (stand.frontHeight - stand.rearHeight)) / INCH;
      // The tables give three decimals of an inch, the computed one four.
      expect(Math.abs(rise - height)).toBeLessThanOrEqual(0.0005);
    }
  });
});

// Shop tables of sine and tangent: rise on 100 mm along the slope, and on 100 mm of base.
describe('the rise of a wedge per 100 mm', () => {
  it.each([
    [5, 8.71557, 8.74887],
    [10, 17.36482, 17.6327],
    [15, 25.8819, 26.79492],
  ])('of slope and of base at %d°', (angle, alongSlope, alongBase) => {
    const tilt = radians(angle);
    const bySlope = standOf({ width: 100, depth: 100, tilt, lift: 12 });
    expect(bySlope.frontHeight - bySlope.rearHeight).toBeCloseTo(alongSlope, 5);
    const byBase = standOf({ width: 100, depth: 100 / Math.cos(tilt), tilt, lift: 12 });
    expect(byBase.frontHeight - byBase.rearHeight).toBeCloseTo(alongBase, 5);
  });
});

// Worked by hand: 200 × 180 mm of base, 20 mm high in front and 80 behind, 750 kg/m³: 1.8 litres, 1.350 kg.
it('a wedge of 200 × 180 mm, 20 to 80 mm high, weighs 1.350 kg at 750 kg/m³', () => {
  const stand = standOf({ width: 180, depth: Math.hypot(200, 60), tilt: -Math.atan2(60, 200), lift: 20 });
  expect(stand.frontHeight).toBeCloseTo(20, 10);
  expect(stand.rearHeight).toBeCloseTo(80, 10);
  expect(stand.width).toBe(180);
  expect(stand.profile[1]?.[0]).toBeCloseTo(200, 10);
  expect(stand.mass).toBeCloseTo(1.35, 10);
});

// Common practice, no source: a 6-inch-wide stand stacked from 1/8-inch board.
it('a stand 6 inches wide takes 48 layers of 1/8-inch board', () => {
  const stand = standOf({ width: 6 * INCH, depth: 205, tilt: radians(10), lift: 12 }, INCH / 8);
  expect(stand.layers).toBe(48);
  expect(stand.width).toBeCloseTo(152.4, 9);
  expect(stand.leftOver).toBeCloseTo(0, 9);
});
