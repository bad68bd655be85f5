import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { add, cross, distance, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { monitorBodies, monitorHull } from '$lib/layout/bodies.ts';
import type { Monitor } from '$lib/project/project.ts';
import { bendOf, facesOf } from '$lib/project/screenFaces.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const flat: Monitor = { x: 200, y: 480, width: 597.727, height: 336.221, bottom: 110, depth: 40, turn: 0, lean: 0, curve: null }; // prettier-ignore

const cornersOf = (monitor: Monitor): Vec3[] =>
  facesOf(monitor).flatMap(({ middle, across, up, width, height }) =>
    [0, height].flatMap((over) =>
      [-1, 1].map((side) => add(add(middle, scale(across, (side * width) / 2)), scale(up, over))),
    ),
  );

describe('a screen that is turned and leans', () => {
  // Computed with a general rotation: turned about the plumb line through its lower middle, then leant back about its lower edge.
  test.each([
    [20, 12, [-80.84, 377.783, 110], [-104.748, 443.471, 438.874], [0.334546, -0.919158, 0.207912]],
    [-15, -5, [-88.68, 557.352, 110], [-96.264, 529.046, 444.942], [-0.257834, -0.96225, -0.087156]],
  ] as const)('by %d° and %d° has its corners and its normal', (turn, lean, bottom, top, normal) => {
    const turned = { ...flat, turn, lean };
    const [face] = facesOf(turned);
    const [lower, , upper, other] = cornersOf(turned);
    if (!face || !lower || !upper || !other) throw new Error('expected a face');
    for (const [found, told, digits] of [
      [lower, bottom, 2],
      [upper, top, 2],
      [face.normal, normal, 6],
    ] as const) {
      expect(found.x).toBeCloseTo(told[0], digits);
      expect(found.y).toBeCloseTo(told[1], digits);
      expect(found.z).toBeCloseTo(told[2], digits);
    }
    // The diagonal of 27 in stays.
    expect(distance(lower, other)).toBeCloseTo(27 * 25.4, 2);
  });

  test('an upright one has the frame’s own directions, to the last digit', () => {
    expect(facesOf(flat)).toEqual([
      {
        middle: vec3(200, 480, 110),
        across: vec3(1, 0, 0),
        up: vec3(0, 0, 1),
        normal: vec3(0, -1, 0),
        width: 597.727,
        height: 336.221,
      },
    ]);
  });
});

describe('a curved screen', () => {
  // Width as the chord, bend radius; half angle in degrees and rise of the arc, computed.
  test.each([
    [596.736, 1000, 17.3596, 45.5491],
    [797.2, 1800, 12.7939, 44.6886],
    [1198.6, 1000, 36.8198, 199.4755],
    [1198.6, 1800, 19.4476, 102.6964],
  ])('%d mm wide on a radius of %d mm turns by ±%d° and comes %d mm forward', (width, curve, half, rise) => {
    const bend = bendOf({ ...flat, width, curve }) ?? [];
    const [first, last] = [bend[0], bend.at(-1)];
    if (!first || !last) throw new Error('expected a bend');
    expect(last.angle).toBeCloseTo(radians(half), 5);
    expect(first.angle).toBe(-last.angle);
    expect(flat.y - last.point.y).toBeCloseTo(rise, 3);
    expect(distance(first.point, last.point)).toBeCloseTo(width, 9);
  });

  const anyCurved = fc.record({
    turn: numberFrom(-60, 60),
    lean: numberFrom(-20, 30),
    width: numberFrom(300, 1300),
    curve: numberFrom(700, 4000),
  });

  test('is strips that touch each other, face the middle of the bend, and lie on it with both edges', () => {
    fc.assert(
      fc.property(anyCurved, (sizes) => {
        const monitor = { ...flat, ...sizes };
        const [whole] = facesOf({ ...monitor, curve: null });
        if (!whole) throw new Error('expected a face');
        const centre = add(whole.middle, scale(whole.normal, sizes.curve));
        const faces = facesOf(monitor);
        const ends = faces.map(({ middle, across, width }) => [
          add(middle, scale(across, -width / 2)),
          add(middle, scale(across, width / 2)),
        ]);
        ends.forEach(([from, to], index) => {
          if (!from || !to) throw new Error('expected two ends');
          for (const end of [from, to]) expect(distance(end, centre)).toBeCloseTo(sizes.curve, 8);
          const next = ends[index + 1]?.[0];
          if (next) expect(distance(to, next)).toBeLessThan(1e-9);
        });
        for (const { across, up, normal, middle } of faces) {
          expect(distance(cross(across, up), normal)).toBeLessThan(1e-12);
          expect(dot(subtract(centre, middle), normal)).toBeGreaterThan(0);
        }
      }),
      { numRuns: runs(300) },
    );
  });

  test('lies in the box round it, bodies of its strips and all', () => {
    fc.assert(
      fc.property(anyCurved, (sizes) => {
        const monitor = { ...flat, ...sizes };
        const hull = monitorHull(monitor);
        // The back of a bend is wider than its face, by its depth at the most.
        for (const { normal, offset } of hull.faces)
          for (const body of monitorBodies(monitor))
            for (const corner of body.vertices) expect(dot(normal, corner) - offset).toBeLessThan(monitor.depth);
        for (const corner of cornersOf(monitor))
          for (const { normal, offset } of hull.faces) expect(dot(normal, corner) - offset).toBeLessThan(1e-6);
      }),
      { numRuns: runs(100) },
    );
  });
});
