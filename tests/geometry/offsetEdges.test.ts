import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offsetEdges } from '$lib/geometry/offsetEdges.ts';
import type { Point } from '$lib/geometry/point.ts';

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

/** Corners on a circle, far enough apart for every edge to keep its length. */
const convex = fc
  .tuple(
    fc.integer({ min: 3, max: 9 }),
    fc.double({ min: 0, max: 6, noNaN: true }),
    fc.double({ min: 20, max: 900, noNaN: true }),
  )
  .chain(([corners, turn, radius]) =>
    fc.array(fc.double({ min: 0, max: 0.5, noNaN: true }), { minLength: corners, maxLength: corners }).map((shifts) =>
      shifts.map((shift, i): Point => {
        const angle = turn + (2 * Math.PI * (i + shift)) / corners;
        return [radius * Math.cos(angle), radius * Math.sin(angle)];
      }),
    ),
  );

describe('offsetEdges', () => {
  it('moves each edge by its own distance', () => {
    expect(offsetEdges(square, [0, 1, 2, 3])).toEqual([
      [3, 0],
      [9, 0],
      [9, 8],
      [3, 8],
    ]);
  });

  it('moves outwards for negative distances', () => {
    expect(offsetEdges(square, [-1, -1, -1, -1])).toEqual([
      [-1, -1],
      [11, -1],
      [11, 11],
      [-1, 11],
    ]);
  });

  it('leaves corners alone where nothing moves', () => {
    expect(offsetEdges(square, [0, 0, 0, 0])).toEqual(square);
  });

  it('keeps a corner that hardly turns in its place', () => {
    const almost: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 10 + 1e-13],
      [0, 10],
    ];
    const moved = offsetEdges(almost, [0, 0, 1, 1, 0]);
    expect(moved?.[3]?.[0]).toBeCloseTo(5, 9);
    expect(moved?.[3]?.[1]).toBeCloseTo(9, 9);
  });

  it('has no answer where an edge would vanish, turn round or cross another', () => {
    expect(offsetEdges(square, [5, 0, 5, 0])).toBeNull();
    expect(offsetEdges(square, [6, 0, 6, 0])).toBeNull();
    expect(offsetEdges(square, [6, 6, 6, 6])).toBeNull();
    // The notch is driven through the base without any edge turning round.
    const notched: Point[] = [
      [0, 0],
      [30, 0],
      [30, 10],
      [20, 10],
      [15, 2],
      [10, 10],
      [0, 10],
    ];
    expect(offsetEdges(notched, [0, 0, 0, 2, 2, 0, 0])).toBeNull();
  });

  it('has no answer where neighbours in one line part', () => {
    const inLine: Point[] = [
      [0, 0],
      [5, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    expect(offsetEdges(inLine, [1, 2, 0, 0, 0])).toBeNull();
  });

  it('puts every edge parallel to its old one, at its distance', () => {
    fc.assert(
      fc.property(
        convex,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 }),
        (points, distances) => {
          const inward = distances.slice(0, points.length);
          const moved = offsetEdges(points, inward);
          fc.pre(moved !== null);
          points.forEach((from, i) => {
            const to = points[(i + 1) % points.length] ?? from;
            const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
            for (const corner of [moved[i], moved[(i + 1) % points.length]]) {
              const [x, y] = corner ?? [NaN, NaN];
              const height = ((to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0])) / length;
              // The coordinates reach 1e3 mm; corners of up to 170° stretch their rounding by a factor of about 100.
              expect(height).toBeCloseTo(inward[i] ?? NaN, 9);
            }
          });
        },
      ),
    );
  });

  it('comes back when moved in and out again', () => {
    fc.assert(
      fc.property(convex, fc.double({ min: 0, max: 2, noNaN: true }), (points, distance) => {
        const inner = offsetEdges(
          points,
          points.map(() => distance),
        );
        fc.pre(inner !== null);
        const outer = offsetEdges(
          inner,
          points.map(() => -distance),
        );
        points.forEach(([x, y], i) => {
          expect(outer?.[i]?.[0]).toBeCloseTo(x, 8);
          expect(outer?.[i]?.[1]).toBeCloseTo(y, 8);
        });
      }),
    );
  });
});
