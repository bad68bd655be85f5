import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, along, between, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, sixSided, stretchInside, uprightBox, type Solid } from '$lib/geometry/solid.ts';
import { numberFrom } from '../numbers.ts';

const cube = uprightBox(vec3(0, 0, 0), vec3(10, 10, 10));

/** A box turned about z and leaning, so that no face is square to the frame. */
function leaning(at: Vec3, turn: number, lean: number): Solid {
  const a = vec3(Math.cos(turn), Math.sin(turn), 0);
  const b = vec3(-Math.sin(turn) * Math.cos(lean), Math.cos(turn) * Math.cos(lean), Math.sin(lean));
  const c = vec3(Math.sin(turn) * Math.sin(lean), -Math.cos(turn) * Math.sin(lean), Math.cos(lean));
  const corner = (i: number, j: number, k: number): Vec3 => along(along(along(at, a, i), b, j), c, k);
  const ring = (k: number): Vec3[] => [corner(0, 0, k), corner(6, 0, k), corner(6, 8, k), corner(0, 8, k)];
  return sixSided([...ring(0), ...ring(5)]);
}

const holds = (solid: Solid, point: Vec3): boolean =>
  stretchInside(solid, point, add(point, vec3(1e-7, 2e-7, 3e-7))) !== null;

describe('overlapDepth', () => {
  test('is the shortest way apart for boxes square to the frame', () => {
    expect(overlapDepth(cube, uprightBox(vec3(8, 3, 3), vec3(10, 4, 4)))).toBeCloseTo(2, 12);
    expect(overlapDepth(cube, uprightBox(vec3(10, 0, 0), vec3(5, 5, 5)))).toBeCloseTo(0, 12);
    expect(overlapDepth(cube, uprightBox(vec3(13, 0, 0), vec3(5, 5, 5)))).toBeCloseTo(-3, 12);
  });

  test('tells crossing edges apart that no face parts', () => {
    // Two long bars crossing like an X, one over the other: every face's plane cuts the other bar.
    const below = leaning(vec3(0, 0, 0), Math.PI / 4, 0.5);
    expect(overlapDepth(below, leaning(vec3(0, 0, 20), -Math.PI / 4, -0.5))).toBeLessThan(0);
  });

  test('agrees with a search for a common point, is symmetric, and vanishes when moved apart by its depth', () => {
    const some = fc.tuple(
      numberFrom(-8, 14),
      numberFrom(-8, 14),
      numberFrom(-8, 14),
      numberFrom(0, 6),
      numberFrom(-1, 1),
    );
    fc.assert(
      fc.property(some, ([x, y, z, turn, lean]) => {
        const other = leaning(vec3(x, y, z), turn, lean);
        const depth = overlapDepth(cube, other);
        // Apart, the first plane found between them ends the search, and which is first depends on the order.
        if (depth > 0) expect(overlapDepth(other, cube)).toBeCloseTo(depth, 9);
        else expect(overlapDepth(other, cube)).toBeLessThanOrEqual(0);
        const [from, , to] = other.vertices;
        if (!from || !to) throw new Error('a body has corners');
        const shared = Array.from({ length: 9 }, (_, i) => between(from, other.vertices[6] ?? to, (i + 0.5) / 9)).some(
          (point) => holds(cube, point),
        );
        if (shared) expect(depth).toBeGreaterThan(0);
      }),
    );
  });
});

describe('stretchInside', () => {
  test('gives the part of a segment that lies in the body', () => {
    expect(stretchInside(cube, vec3(-10, 5, 5), vec3(30, 5, 5))).toEqual([0.25, 0.5]);
    expect(stretchInside(cube, vec3(5, 5, 5), vec3(5, 5, 25))).toEqual([0, 0.25]);
    expect(stretchInside(cube, vec3(1, 1, 1), vec3(2, 2, 2))).toEqual([0, 1]);
  });

  test('is null beside the body and along its face', () => {
    expect(stretchInside(cube, vec3(-10, 11, 5), vec3(30, 11, 5))).toBeNull();
    expect(stretchInside(cube, vec3(-10, 10, 5), vec3(30, 10, 5))).toBeNull();
    expect(stretchInside(cube, vec3(-10, 5, 5), vec3(-1, 5, 5))).toBeNull();
  });
});
