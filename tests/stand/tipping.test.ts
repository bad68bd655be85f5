import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import { edgeNames, edgesOf, GRAVITY, marginsOf, tippingForce } from '$lib/stand/tipping.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const UP = vec3(0, 0, 1);

/** Corners of a base of a size, turned, as a footprint lists them. */
function base(width: number, depth: number, turn: number): Vec3[] {
  const corner = (x: number, y: number): Vec3 =>
    vec3(x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn), 0);
  const [w, d] = [width / 2, depth / 2];
  return [corner(w, -d), corner(w, d), corner(-w, d), corner(-w, -d)];
}

/** Whether a plumb line from `centre` on a desk tilted by `tilt`, downhill towards `azimuth`, ends between the corners. */
function stands(centre: Vec3, corners: readonly Vec3[], tilt: number, azimuth: number): boolean {
  const shift = centre.z * Math.tan(tilt);
  const [x, y] = [centre.x + shift * Math.cos(azimuth), centre.y + shift * Math.sin(azimuth)];
  return corners.every((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) >= 0;
  });
}

const anyStand = fc.record({
  width: numberFrom(60, 400),
  depth: numberFrom(60, 400),
  turn: numberFrom(-3, 3),
  x: numberFrom(-20, 20),
  y: numberFrom(-20, 20),
  z: numberFrom(10, 600),
});

describe('a weight on a base', () => {
  test('survives the least tilt found by trying every direction', () => {
    fc.assert(
      fc.property(anyStand, ({ width, depth, turn, x, y, z }) => {
        const corners = base(width, depth, turn);
        const centre = vec3(x, y, z);
        const margins = marginsOf(centre, edgesOf(corners, 'right'), UP);
        const least = Math.min(...edgeNames.map((edge) => margins[edge].angle));
        const azimuths = Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360);
        expect(azimuths.every((azimuth) => stands(centre, corners, least - 1e-9, azimuth))).toBe(true);
        // Half a degree off the worst direction a tilt takes 1/cos 0.5° of the reach: 4e-5 more.
        expect(azimuths.some((azimuth) => !stands(centre, corners, least * 1.0001 + 1e-9, azimuth))).toBe(true);
      }),
      { numRuns: runs(60) },
    );
  });

  test('has margins that add up to the base’s size, and angles atan(margin / height)', () => {
    fc.assert(
      fc.property(anyStand, ({ width, depth, turn, x, y, z }) => {
        const margins = marginsOf(vec3(x, y, z), edgesOf(base(width, depth, turn), 'right'), UP);
        expect(margins.front.margin + margins.rear.margin).toBeCloseTo(depth, 9);
        expect(margins.inboard.margin + margins.outboard.margin).toBeCloseTo(width, 9);
        for (const edge of edgeNames) {
          expect(Math.tan(margins[edge].angle) * z).toBeCloseTo(margins[edge].margin, 8);
        }
      }),
    );
  });

  test('outside its base has a negative margin and angle', () => {
    const margins = marginsOf(vec3(70, 0, 100), edgesOf(base(100, 100, 0), 'right'), UP);
    expect(margins.outboard).toEqual({ margin: -20, angle: Math.atan2(-20, 100) });
    expect(margins.inboard.margin).toBe(120);
  });

  test('knows the middle of the pair from either side', () => {
    const corners = base(100, 200, 0);
    const off = vec3(10, 0, 50);
    expect(marginsOf(off, edgesOf(corners, 'right'), UP).inboard.margin).toBe(60);
    expect(marginsOf(off, edgesOf(corners, 'left'), UP).inboard.margin).toBe(40);
  });
});

describe('a weight on a slope', () => {
  test('is as if the desk were tilted by as much, square to its low edge', () => {
    fc.assert(
      fc.property(numberFrom(-0.7, 0.7), numberFrom(40, 300), numberFrom(20, 300), (tilt, reach, over) => {
        // Past a quarter turn no tilt is the least one that tips.
        fc.pre(Math.atan2(reach, over) + Math.abs(tilt) < Math.PI / 2);
        const [rear, up] = [vec3(0, Math.cos(tilt), -Math.sin(tilt)), vec3(0, Math.sin(tilt), Math.cos(tilt))];
        const at = (x: number, s: number, w: number): Vec3 => vec3(x, s * rear.y + w * up.y, s * rear.z + w * up.z);
        const corners = [at(50, 0, 0), at(50, 2 * reach, 0), at(-50, 2 * reach, 0), at(-50, 0, 0)];
        const margins = marginsOf(at(0, reach, over), edgesOf(corners, 'right'), up);
        expect(margins.rear.angle).toBeCloseTo(Math.atan2(reach, over) - tilt, 12);
        expect(margins.front.angle).toBeCloseTo(Math.atan2(reach, over) + tilt, 12);
        expect(margins.rear.margin).toBeCloseTo(reach - over * Math.tan(tilt), 9);
        expect(margins.inboard.margin).toBeCloseTo(50, 9);
        // Sideways the slope shortens the height that counts.
        expect(margins.inboard.angle).toBeCloseTo(Math.asin((50 * Math.cos(tilt)) / Math.hypot(50, over)), 12);
      }),
    );
  });
});

describe('a push', () => {
  test('on a level base tips when force × height is weight × margin', () => {
    fc.assert(
      fc.property(anyStand, numberFrom(0.5, 40), numberFrom(50, 900), ({ width, depth, turn, x, y, z }, mass, top) => {
        const edges = edgesOf(base(width, depth, turn), 'right');
        const margins = marginsOf(vec3(x, y, z), edges, UP);
        for (const edge of edgeNames) {
          const force = tippingForce(vec3(x, y, z), mass, edges[edge], [vec3(0, 0, top), vec3(30, 9, top / 2)]);
          expect(force * top).toBeCloseTo(mass * GRAVITY * Math.max(0, margins[edge].margin), 6);
        }
      }),
    );
  });

  test('on a slope tips sideways over an edge that falls with it', () => {
    const tilt = radians(20);
    const [rear, up] = [vec3(0, Math.cos(tilt), -Math.sin(tilt)), vec3(0, Math.sin(tilt), Math.cos(tilt))];
    const at = (x: number, s: number, w: number): Vec3 => vec3(x, s * rear.y + w * up.y, s * rear.z + w * up.z);
    const edges = edgesOf([at(50, 0, 0), at(50, 200, 0), at(-50, 200, 0), at(-50, 0, 0)], 'right');
    const force = tippingForce(at(0, 100, 150), 5, edges.outboard, [at(0, 0, 300), at(0, 200, 300)]);
    // About the slope's line gravity counts with cos 20° and the push with its whole height over the slope.
    expect(force).toBeCloseTo((5 * GRAVITY * Math.cos(tilt) * 50) / 300, 9);
    expect(degrees(tilt)).toBeCloseTo(20, 12);
  });
});
