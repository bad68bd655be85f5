import { expect, test } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { centroidOf } from '$lib/stand/centroid.ts';
import { slideOf } from '$lib/stand/sliding.ts';
import { edgesOf, marginsOf } from '$lib/stand/tipping.ts';

const known = (friction: number) => ({ least: friction, most: friction });

test('a centre of mass 200 mm up needs 35.265 mm on a plane of 10° (UL 1678 §16.3.1, IEC 60065 §19.1: read; tan computed)', () => {
  const reach = 35.265;
  const corners = [vec3(reach, -90, 0), vec3(reach, 90, 0), vec3(-reach, 90, 0), vec3(-reach, -90, 0)];
  const { inboard, outboard } = marginsOf(vec3(0, 0, 200), edgesOf(corners, 'right'), vec3(0, 0, 1));
  // 35.265 is rounded at its third decimal: 0.0005 mm at 200 mm is 0.00014°.
  expect(Math.abs(degrees(outboard.angle) - 10)).toBeLessThan(1.5e-4);
  expect(inboard.angle).toBe(outboard.angle);
  expect(Math.tan(radians(10))).toBeCloseTo(0.176327, 6);
});

// Friction angle = atan μ, computed; 0.12 smooth pine faces (Mater. Constr. 64, 2014, read), 0.40 the least for wood on
// wood, dry (drive engineering guide, read).
test.each([
  [0.12, 6.84],
  [0.3, 16.7],
  [0.4, 21.8],
  [0.5, 26.57],
])('friction of %d holds a slope up to %d°', (friction, angle) => {
  expect(degrees(slideOf(0, known(friction), false).frictionAngle)).toBeCloseTo(angle, 2);
  expect(slideOf(radians(angle + 0.01), known(friction), false).margin).toBeLessThan(0);
  expect(slideOf(radians(angle - 0.01), known(friction), false).margin).toBeGreaterThan(0);
});

test('the middle of a wedge 200 mm long, 20 mm high in front and 80 mm behind (trapezium formulas of any handbook)', () => {
  const [u, z] = centroidOf(
    [
      [0, 0],
      [200, 0],
      [200, 80],
      [0, 20],
    ],
    [],
  );
  expect(u).toBeCloseTo((200 * (20 + 2 * 80)) / (3 * (20 + 80)), 12);
  expect(z).toBeCloseTo((20 ** 2 + 20 * 80 + 80 ** 2) / (3 * (20 + 80)), 12);
});
