import { expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Plan } from '$lib/solution/document.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';
import { withGap } from '../rooms.ts';

/** A pair whose axes are level (ear at the tweeter's height) on a table large enough, marks at (±x, y) from the head. */
function levelPair(x: number, y: number): Plan {
  const of = project({
    '/layouts/0/desk/outline/width': 6000,
    '/layouts/0/desk/outline/depth': 4000,
    ...withGap(null),
    '/layouts/0/monitors': [],
    '/layouts/0/listener/setback': 0,
    '/layouts/0/listener/earHeight': 735 + 12 + 205,
    '/layouts/0/placement/left': { x: -x, y },
    '/layouts/0/placement/right': { x, y },
  });
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
  return planned.value;
}

/** Azimuth of a point from the head, degrees; 0 straight ahead, positive to the left, as ITU-R BS.2051 counts it. */
const azimuth = (from: { x: number; y: number }, to: { x: number; y: number }): number =>
  degrees(Math.atan2(from.x - to.x, to.y - from.y));

test('layout 0+2+0: azimuth ±30°, elevation 0° (ITU-R BS.2051, layout data in ebu/ebu_adm_renderer, read)', () => {
  const radius = 2000;
  const { sides, head, triangle } = levelPair(radius * Math.sin(Math.PI / 6), radius * Math.cos(Math.PI / 6));
  expect(azimuth(head, sides.left.aimedPoint)).toBeCloseTo(30, 9);
  expect(azimuth(head, sides.right.aimedPoint)).toBeCloseTo(-30, 9);
  expect(sides.left.axisElevation).toBeCloseTo(0, 9);
  expect(sides.left.toe).toBeCloseTo(30, 9);
  // The pair subtends 60° at the reference point: ITU-R BS.775-4, recommends 2 (quoted).
  expect(triangle.angle).toBeCloseTo(60, 9);
  expect(triangle.base).toBeCloseTo(radius, 9);
});

test('worked layout of radius 2.1 m: 1.82 m ahead, ±1.05 m aside, 30° toe-in (BBC R&D SBSBRIR set-up file, read)', () => {
  // The file rounds to centimetres; the exact place is 2.1·cos 30° = 1.8187 m (computed).
  const { sides, triangle } = levelPair(1050, 2100 * Math.cos(Math.PI / 6));
  expect(sides.right.toe).toBeCloseTo(30, 9);
  expect(triangle.rightDistance).toBeCloseTo(2100, 9);
  expect(2100 * Math.cos(Math.PI / 6)).toBeCloseTo(1818.7, 1);
  // A centimetre's rounding, 5 mm at most, turns a line of 2.1 m by 5·sin 30°/2100 rad = 0.07° at most.
  const rounded = levelPair(1050, 1820);
  expect(Math.abs(rounded.sides.right.toe - 30)).toBeLessThan(0.07);
});

// Computed with c = 343.2 m/s, base 1.0 m, depth √3/2 m: the head moved sideways.
test.each([
  [10, 29.136, 0.0869],
  [50, 145.551, 0.4336],
  [100, 290.286, 0.8628],
])('a head %d mm to the side hears %d µs and %d dB between the sides', (aside, time, level) => {
  const of = project({
    '/layouts/0/desk/outline/depth': 2000,
    ...withGap(null),
    '/layouts/0/monitors': [],
    '/layouts/0/listener/setback': 0,
    '/layouts/0/listener/offset': aside,
    '/layouts/0/listener/earHeight': 735 + 12 + 205,
    '/layouts/0/placement/left': { x: -500, y: 500 * Math.sqrt(3) },
    '/layouts/0/placement/right': { x: 500, y: 500 * Math.sqrt(3) },
    '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
  });
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error('expected a plan');
  // To the right the left path is the longer one: positive, and the right side is louder.
  expect(planned.value.triangle.timeDifference).toBeCloseTo(time, 3);
  expect(planned.value.triangle.levelDifference).toBeCloseTo(level, 4);
});
