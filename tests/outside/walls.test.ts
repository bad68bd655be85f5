import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bounce } from '$lib/acoustics/bounce.ts';
import { surfacesAround } from '$lib/acoustics/surface.ts';
import { distance, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { rectangularDesk, wallAt } from '../rooms.ts';
import { runs } from '../runs.ts';

const [source, head] = [vec3(-430, 300, 205), vec3(0, -180, 445)];

/** The bounce by one wall, seen from the middle of the desk's front edge at a bearing and a distance, mm. */
function by(bearing: number, far: number, [from, to]: readonly [Vec3, Vec3] = [source, head]) {
  const surfaces = surfacesAround({
    desk: rectangularDesk(1400, 700, 735),
    room: { walls: [wallAt('wall', bearing, far)], ceiling: null },
    monitors: [],
    surfaces: [],
  });
  const wall = surfaces.find(({ name }) => name === 'wall:wall');
  const met = wall && bounce(wall.plane, from, to);
  if (!met) throw new Error('expected a bounce');
  return met;
}

const RAD = Math.PI / 180;

describe('a wall at any bearing', () => {
  // The image source of textbook acoustics: image = p − 2((p − q)·n)n, worked out apart from this code with numpy.
  test.each([
    { name: 'straight behind', bearing: 0, far: 820, point: [-282.895, 820, 287.105], detour: 910.102 },
    {
      name: '17° to the left',
      bearing: -17,
      far: 820 * Math.cos(17 * RAD),
      point: [-466.15, 677.484, 272.156],
      detour: 688.62,
    },
    {
      name: '45° to the left',
      bearing: -45,
      far: 2100 / Math.SQRT2,
      point: [-1124.384, 975.616, 295.082],
      detour: 1904.638,
    },
    { name: 'on the left', bearing: -90, far: 1200, point: [-1200, 112.386, 298.807], detour: 1354.111 },
  ])('$name', ({ bearing, far, point, detour }) => {
    const met = by(bearing, far);
    expect(met.direct).toBeCloseTo(687.677, 3);
    expect(met.excess).toBeCloseTo(detour, 3);
    for (const [index, axis] of (['x', 'y', 'z'] as const).entries()) {
      expect(met.point[axis]).toBeCloseTo(point[index] ?? NaN, 2);
    }
  });

  test('sends back the same when all of the scene is turned', () => {
    const turned = ({ x, y, z }: Vec3, by: number): Vec3 =>
      vec3(x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by), z);
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: 600, max: 5000, noNaN: true }),
        (bearing, turn, far) => {
          const straight = by(bearing, far);
          // A bearing is counted clockwise, a turn the other way.
          const at = by(bearing - turn, far, [turned(source, turn * RAD), turned(head, turn * RAD)]);
          expect(Math.abs(at.excess - straight.excess)).toBeLessThan(1e-8);
          expect(distance(at.point, turned(straight.point, turn * RAD))).toBeLessThan(1e-6);
        },
      ),
      { numRuns: runs(500) },
    );
  });
});
