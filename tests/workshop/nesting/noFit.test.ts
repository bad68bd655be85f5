import fc from 'fast-check';
import { areaD, minkowskiDiffD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { ARC_ERROR, convexPieces } from '$lib/workshop/nesting/convexPieces.ts';
import { clearRight, noFit } from '$lib/workshop/nesting/noFit.ts';
import { lippedCorners, wedgeCorners } from '../shapes.ts';
import { edgeGap, pointGap } from '$lib/geometry/edgeGap.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { isInside } from '$lib/geometry/inside.ts';
import { polygonPath, type Path } from '$lib/geometry/contour.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Point } from '$lib/geometry/point.ts';

const turned = (points: readonly Point[], degrees: number): Point[] => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return points.map(([x, y]) => [cos * x - sin * y, sin * x + cos * y]);
};
const moved = (points: readonly Point[], dx: number, dy: number): Point[] => points.map(([x, y]) => [x + dx, y + dy]);
const gap = (a: readonly Point[], b: readonly Point[]): number => {
  const [first, second] = [edgesOf(polygonPath(a)), edgesOf(polygonPath(b))];
  return Math.min(...first.flatMap((edge) => second.map((other) => edgeGap(edge, other))));
};
const anyTurnedWedge = fc
  .record({
    run: fc.integer({ min: 20, max: 200 }),
    thin: fc.integer({ min: 1, max: 30 }),
    rise: fc.integer({ min: 0, max: 90 }),
    degrees: fc.integer({ min: 0, max: 359 }),
  })
  .map(({ run, thin, rise, degrees }) => turned(wedgeCorners(run, thin, thin + rise), degrees));

describe('noFit', () => {
  it('has the area of the Minkowski difference that clipper2 finds', () => {
    fc.assert(
      fc.property(anyTurnedWedge, anyTurnedWedge, (a, b) => {
        // clipper2 rounds this one to 0.01, so it is asked in micrometres: 1300 mm of outline may differ by 0.013 mm².
        const fine = (points: readonly Point[]) => points.map(([x, y]) => ({ x: x * 1000, y: y * 1000 }));
        const swept = minkowskiDiffD(fine(b), fine(a), true);
        const theirs = Math.max(...swept.map((path) => Math.abs(areaD(path)))) / 1e6;
        expect(Math.abs(signedArea(polygonPath(noFit(a, b))) - theirs)).toBeLessThan(0.013);
      }),
    );
  });
});

describe('clearRight', () => {
  it('puts the second shape at exactly the spacing, and never nearer further right', () => {
    fc.assert(
      fc.property(
        anyTurnedWedge,
        anyTurnedWedge,
        fc.integer({ min: -100, max: 100 }),
        fc.integer({ min: 0, max: 50 }),
        (a, b, rise, tenths) => {
          const spacing = tenths / 10;
          const right = clearRight(noFit(a, b), rise, spacing);
          fc.pre(right > -Infinity);
          expect(gap(a, moved(b, right, rise))).toBeCloseTo(spacing, 6);
          for (const further of [0.5, 5, 50])
            expect(gap(a, moved(b, right + further, rise))).toBeGreaterThan(spacing - 1e-9);
        },
      ),
    );
  });

  it('asks nothing of shapes that pass over each other', () => {
    const bar = wedgeCorners(10, 2, 2);
    expect(clearRight(noFit(bar, bar), 4.1, 2)).toBe(-Infinity);
    expect(clearRight(noFit(bar, bar), 3.9, 2)).toBeGreaterThan(10);
  });
});

describe('convexPieces', () => {
  const isConvex = (piece: readonly Point[]): boolean =>
    piece.every(([x, y], i) => {
      const [u, v] = piece[(i + 1) % piece.length] ?? [x, y];
      const [p, q] = piece[(i + 2) % piece.length] ?? [x, y];
      return (u - x) * (q - v) - (v - y) * (p - u) > -1e-9;
    });
  const areaOf = (pieces: readonly (readonly Point[])[]): number =>
    pieces.reduce((sum, piece) => sum + signedArea(polygonPath(piece)), 0);

  it('leaves a convex outline whole and takes a lipped wedge apart without loss', () => {
    expect(convexPieces(polygonPath(wedgeCorners(100, 10, 30)))).toEqual([wedgeCorners(100, 10, 30)]);
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 300 }), fc.integer({ min: 1, max: 40 }), (run, lip) => {
        const outline = polygonPath(lippedCorners(run, 10, 10 + run / 6, lip + 3, 8));
        const pieces = convexPieces(outline);
        expect(pieces.every(isConvex)).toBe(true);
        expect(pieces).toHaveLength(2);
        expect(areaOf(pieces)).toBeCloseTo(signedArea(outline), 8);
      }),
    );
  });

  it('takes a comb of many notches apart', () => {
    const teeth = Array.from({ length: 6 }, (_, i): Point[] => [
      [100 - i * 15, 20],
      [95 - i * 15, 8],
      [90 - i * 15, 8],
      [88 - i * 15, 20],
    ]).flat();
    const outline = polygonPath([[0, 0], [100, 0], ...teeth, [0, 20]]);
    const pieces = convexPieces(outline);
    expect(pieces.every(isConvex)).toBe(true);
    expect(areaOf(pieces)).toBeCloseTo(signedArea(outline), 8);
  });

  it('surrounds arcs by no more than the stated error', () => {
    fc.assert(
      fc.property(fc.integer({ min: -60, max: 100 }), fc.integer({ min: 10, max: 80 }), (percent, size) => {
        const outline: Path = {
          kind: 'path',
          closed: true,
          vertices: [
            { x: 0, y: 0, bulge: 0 },
            { x: 2 * size, y: 0, bulge: percent / 100 },
            { x: 2 * size, y: size, bulge: 0 },
            { x: 0, y: size, bulge: 0 },
          ],
        };
        const pieces = convexPieces(outline);
        const arc = 4 * Math.atan(Math.abs(percent) / 100) * size;
        expect(areaOf(pieces)).toBeGreaterThan(signedArea(outline) - 1e-9);
        expect(areaOf(pieces)).toBeLessThan(signedArea(outline) + ARC_ERROR * (arc + size) * 3);
        for (const piece of pieces) {
          for (const corner of piece) {
            const off = Math.min(...edgesOf(outline).map((edge) => pointGap(corner, edge)));
            expect(isInside(corner, outline) || off < ARC_ERROR + 1e-9).toBe(true);
          }
        }
      }),
    );
  });
});
