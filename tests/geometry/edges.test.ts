import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, type Path } from '$lib/geometry/contour.ts';
import { edgeGap, meetings, pointGap } from '$lib/geometry/edgeGap.ts';
import { edgesOf, pointAt, type Edge } from '$lib/geometry/edge.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { isInside } from '$lib/geometry/inside.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Point } from '$lib/geometry/point.ts';

const coordinate = fc.integer({ min: -100, max: 100 });
const bulge = fc.oneof(
  fc.constant(0),
  fc.integer({ min: -300, max: 300 }).map((percent) => percent / 100),
);
const anyEdge = fc
  .tuple(coordinate, coordinate, coordinate, coordinate, bulge)
  .filter(([x, y, u, v]) => x !== u || y !== v)
  .map(([x, y, u, v, b]): Edge => {
    const path: Path = {
      kind: 'path',
      closed: false,
      vertices: [
        { x, y, bulge: b },
        { x: u, y: v, bulge: 0 },
      ],
    };
    const [edge] = edgesOf(path);
    if (edge === undefined) throw new Error('expected an edge');
    return edge;
  });
const samples = (edge: Edge, count: number): Point[] =>
  Array.from({ length: count + 1 }, (_, i) => pointAt(edge, i / count));
const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const reach = (edge: Edge, count: number): number =>
  Math.max(
    ...samples(edge, count)
      .slice(1)
      .map((point, i) => far(point, samples(edge, count)[i] ?? point)),
  );

describe('edges', () => {
  it('end where they should, on their circle', () => {
    fc.assert(
      fc.property(anyEdge, (edge) => {
        expect(far(pointAt(edge, 0), edge.start)).toBeLessThan(1e-9);
        expect(far(pointAt(edge, 1), edge.end)).toBeLessThan(1e-9);
        expect(pointGap(pointAt(edge, 0.3), edge)).toBeLessThan(1e-9);
      }),
    );
  });

  it('are as far apart as their nearest sampled points, within the sampling step', () => {
    fc.assert(
      fc.property(anyEdge, anyEdge, (a, b) => {
        const [onA, onB] = [samples(a, 60), samples(b, 60)];
        const sampled = Math.min(...onA.flatMap((p) => onB.map((q) => far(p, q))));
        const gap = edgeGap(a, b);
        expect(gap).toBeLessThanOrEqual(sampled + 1e-9);
        expect(gap).toBeGreaterThanOrEqual(sampled - (reach(a, 60) + reach(b, 60)) / 2 - 1e-9);
        for (const point of meetings(a, b)) {
          expect(pointGap(point, a)).toBeLessThan(1e-6);
          expect(pointGap(point, b)).toBeLessThan(1e-6);
        }
      }),
    );
  });
});

it('edges on one line, as rounding leaves them, are as far apart as their ends', () => {
  // The two are a millionth of a millionth of a degree from parallel; their carrying lines cross inside the first.
  const straight = (start: Point, end: Point): Edge => ({ kind: 'straight', start, end });
  const first = straight([14.882848515377589, 18.933329638690495], [125.96520818020554, 65.89819666061528]);
  const second = straight([142.31084324415176, 72.80902012064494], [279.050948642406, 130.62180773129907]);
  const apart = Math.hypot(142.31084324415176 - 125.96520818020554, 72.80902012064494 - 65.89819666061528);
  expect(edgeGap(first, second)).toBeCloseTo(apart, 12);
});

describe('contours', () => {
  const disc: Path = {
    kind: 'path',
    closed: true,
    vertices: [
      { x: 3, y: 0, bulge: 1 },
      { x: -3, y: 0, bulge: 1 },
    ],
  };

  it('a circle drawn as two arcs is a circle: area, extent, inside', () => {
    expect(signedArea(disc)).toBeCloseTo(9 * Math.PI, 12);
    expect(extentOf(disc)).toEqual(extentOf(circle([0, 0], 3)));
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }), (x, y) => {
        const point: Point = [x / 10, y / 10];
        fc.pre(Math.abs(far(point, [0, 0]) - 3) > 1e-9);
        expect(isInside(point, disc)).toBe(far(point, [0, 0]) < 3);
        expect(isInside(point, circle([0, 0], 3))).toBe(far(point, [0, 0]) < 3);
      }),
    );
  });

  it('an arc that turns inwards takes its cap away', () => {
    const bitten: Path = {
      kind: 'path',
      closed: true,
      vertices: [
        { x: 0, y: 0, bulge: 0 },
        { x: 10, y: 0, bulge: 0 },
        { x: 10, y: 10, bulge: -1 },
        { x: 0, y: 10, bulge: 0 },
      ],
    };
    expect(signedArea(bitten)).toBeCloseTo(100 - 12.5 * Math.PI, 10);
    expect(isInside([5, 7], bitten)).toBe(false);
    expect(isInside([5, 4], bitten)).toBe(true);
    expect(isInside([0.5, 7.5], bitten)).toBe(true);
  });
});
