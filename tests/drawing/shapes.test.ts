import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vec3, type Point } from '$lib/geometry/point.ts';
import { liesOn } from '$lib/drawing/coincide.ts';
import { smoothThrough } from '$lib/drawing/curve.ts';
import { convexHull } from '$lib/drawing/hull.ts';
import { penStroke } from '$lib/drawing/pens.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { fromAbove } from '$lib/drawing/projection.ts';
import { projectSolid } from '$lib/drawing/solid.ts';

const points = fc.array(fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 })), {
  minLength: 3,
  maxLength: 40,
});
const turn = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

describe('convexHull', () => {
  it('turns left at every corner and leaves no point outside', () => {
    fc.assert(
      fc.property(points, (given) => {
        const hull = convexHull(given);
        if (hull.length < 3) return;
        hull.forEach((corner, index) => {
          const next = hull[(index + 1) % hull.length] ?? corner;
          const after = hull[(index + 2) % hull.length] ?? corner;
          expect(turn(corner, next, after)).toBeGreaterThan(0);
          for (const point of given) expect(turn(corner, next, point)).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });

  it('keeps the ends of points in a row', () => {
    const hull = convexHull([
      [2, 2],
      [0, 0],
      [1, 1],
    ]);
    expect(hull).toHaveLength(2);
    expect(hull).toEqual(
      expect.arrayContaining([
        [0, 0],
        [2, 2],
      ]),
    );
  });
});

describe('projectSolid', () => {
  it('shows of a box on a table, seen from above, its top and the edges of its bottom that the top hides', () => {
    const corners = [0, 1].flatMap((z) => [vec3(0, 0, z), vec3(2, 0, z), vec3(2, 1, z), vec3(0, 1, z)]);
    const faces = [
      { loop: [0, 1, 2, 3], normal: vec3(0, 0, -1) },
      { loop: [4, 5, 6, 7], normal: vec3(0, 0, 1) },
      { loop: [0, 1, 5, 4], normal: vec3(0, -1, 0) },
      { loop: [1, 2, 6, 5], normal: vec3(1, 0, 0) },
      { loop: [2, 3, 7, 6], normal: vec3(0, 1, 0) },
      { loop: [3, 0, 4, 7], normal: vec3(-1, 0, 0) },
    ];
    const seen = projectSolid({ corners, faces }, fromAbove);
    expect(seen.faces).toEqual([[4, 5, 6, 7].map((index) => fromAbove.flat(corners[index] ?? vec3(0, 0, 0)))]);
    // Four edges of the bottom and four uprights belong to no face that is seen.
    expect(seen.hiddenEdges).toHaveLength(8);
  });
});

describe('smoothThrough', () => {
  it('passes every knot, in order', () => {
    fc.assert(
      fc.property(points, (knots) => {
        const curve = smoothThrough(knots);
        const places = knots.map((knot, index) => curve[index * ((curve.length - 1) / (knots.length - 1))] ?? knot);
        places.forEach(([x, y], index) => {
          expect(x).toBeCloseTo(knots[index]?.[0] ?? NaN, 9);
          expect(y).toBeCloseTo(knots[index]?.[1] ?? NaN, 9);
        });
      }),
    );
  });
});

describe('liesOn', () => {
  it('knows a piece of a line from a line that leaves it', () => {
    expect(
      liesOn(
        [
          [1, 1],
          [5, 5],
        ],
        [
          [
            [0, 0],
            [10, 10],
          ],
        ],
      ),
    ).toBe(true);
    expect(
      liesOn(
        [
          [1, 1],
          [5, 7],
        ],
        [
          [
            [0, 0],
            [10, 10],
          ],
        ],
      ),
    ).toBe(false);
    expect(
      liesOn(
        [
          [1, 1],
          [15, 15],
        ],
        [
          [
            [0, 0],
            [10, 10],
          ],
        ],
      ),
    ).toBe(false);
  });
});

describe('penStroke', () => {
  it('draws wide lines twice as wide as narrow ones, and tells the kinds of line apart by their dashes', () => {
    const style = dimensionStyle(1);
    // 0.25 and 0.5 mm: drawing textbooks after ISO 128.
    expect(penStroke('narrow', style)).toEqual({ width: 0.25, dashes: [] });
    expect(penStroke('wide', style)).toEqual({ width: 0.5, dashes: [] });
    const kinds = (['narrow', 'hidden', 'centre', 'phantom'] as const).map((pen) =>
      penStroke(pen, style).dashes.join(),
    );
    expect(new Set(kinds).size).toBe(4);
  });
});
