import {
  areaPathsD,
  differenceD,
  FillRule,
  inflatePathsD,
  intersectD,
  EndType,
  JoinType,
  type PathD,
} from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { clipConvex, insetConvex, overlapConvex } from '$lib/geometry/clipConvex.ts';
import { circle, polygonPath, type Path } from '$lib/geometry/contour.ts';
import { contourLength } from '$lib/geometry/contourLength.ts';
import { edgesOf, heading, pointAt } from '$lib/geometry/edge.ts';
import { isInside } from '$lib/geometry/inside.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { moved } from '$lib/geometry/moved.ts';
import { notched, squareFloor } from '$lib/geometry/notch.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

/** Corners on an ellipse: convex and counter-clockwise, none too near another. */
const convex: fc.Arbitrary<Point[]> = fc
  .record({
    gaps: fc.array(numberFrom(0.4, 1), { minLength: 3, maxLength: 9 }),
    wide: numberFrom(10, 200),
    high: numberFrom(10, 200),
    x: numberFrom(-500, 500),
  })
  .map(({ gaps, wide, high, x }) => {
    const round = gaps.reduce((a, b) => a + b, 0);
    let at = 0;
    return gaps.map((gap): Point => {
      at += (gap / round) * 2 * Math.PI;
      return [x + wide * Math.cos(at), high * Math.sin(at)];
    });
  });
const point: fc.Arbitrary<Point> = fc.tuple(numberFrom(-700, 700), numberFrom(-250, 250));

const toPath = (points: readonly Point[]): PathD => points.map(([x, y]) => ({ x, y }));
const areaOf = (points: readonly Point[]): number => (points.length === 0 ? 0 : signedArea(polygonPath(points)));
const areaIn = (paths: PathD[]): number => Math.abs(areaPathsD(paths));
/** Corners along a path, arcs in small steps, for the library that knows no arcs. */
const flattened = (path: Path, steps = 200): PathD =>
  edgesOf(path).flatMap((edge) =>
    Array.from({ length: edge.kind === 'arc' ? steps : 1 }, (_, i) => {
      const [x, y] = pointAt(edge, edge.kind === 'arc' ? i / steps : 0);
      return { x, y };
    }),
  );

describe('a convex polygon', () => {
  it('is split by a line into two that have its area', () => {
    fc.assert(
      fc.property(convex, point, point, (polygon, from, to) => {
        fc.pre(Math.hypot(to[0] - from[0], to[1] - from[1]) > 1);
        const [left, right] = [clipConvex(polygon, from, to), clipConvex(polygon, to, from)];
        expect(areaOf(left) + areaOf(right)).toBeCloseTo(areaOf(polygon), 5);
        expect(areaOf(left)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('overlaps another as a polygon library has it', () => {
    fc.assert(
      fc.property(convex, convex, (a, b) => {
        const expected = areaIn(intersectD([toPath(a)], [toPath(b)], FillRule.NonZero, 6));
        expect(Math.abs(areaOf(overlapConvex(a, b)) - expected)).toBeLessThan(0.01);
      }),
    );
  });

  it('shrinks as a polygon library has it, edges lost on the way included', () => {
    fc.assert(
      fc.property(convex, numberFrom(0, 60), (polygon, by) => {
        const expected = areaIn(inflatePathsD([toPath(polygon)], -by, JoinType.Miter, EndType.Polygon, 100, 6));
        expect(
          Math.abs(
            areaOf(
              insetConvex(
                polygon,
                polygon.map(() => by),
              ),
            ) - expected,
          ),
        ).toBeLessThan(0.05);
      }),
    );
  });
});

describe('rounded corners', () => {
  it('run smoothly, stay inside, and take away what the formula says', () => {
    fc.assert(
      fc.property(convex, numberFrom(0.01, 80), (polygon, asked) => {
        const { path, radius } = roundCorners(polygon, asked, () => true);
        expect(radius).toBeLessThanOrEqual(asked);
        const turns = polygon.map((at, i) => {
          const [before, after] = [polygon.at(i - 1) ?? at, polygon[(i + 1) % polygon.length] ?? at];
          const turn =
            Math.atan2(after[1] - at[1], after[0] - at[0]) - Math.atan2(at[1] - before[1], at[0] - before[0]);
          return (turn + 4 * Math.PI) % (2 * Math.PI);
        });
        // A corner turned by t loses the kite r²·tan(t/2) and keeps the sector r²·t/2.
        const lost = turns.reduce((sum, turn) => sum + radius ** 2 * (Math.tan(turn / 2) - turn / 2), 0);
        expect(signedArea(path)).toBeCloseTo(areaOf(polygon) - lost, 4);
        const edges = edgesOf(path);
        edges.forEach((edge, i) => {
          const next = edges[(i + 1) % edges.length] ?? edge;
          const [a, b] = [heading(edge, 'end'), heading(next, 'start')];
          expect(Math.abs(a[0] * b[1] - a[1] * b[0])).toBeLessThan(1e-5);
        });
      }),
    );
  });

  it('leave the others sharp, and inside corners always', () => {
    const ell: Point[] = [
      [0, 0],
      [40, 0],
      [40, 10],
      [10, 10],
      [10, 30],
      [0, 30],
    ];
    const { path, radius } = roundCorners(ell, 4, (i) => i !== 0);
    expect(radius).toBe(4);
    expect(path.vertices.filter(({ bulge }) => bulge !== 0)).toHaveLength(4);
    expect(path.vertices).toContainEqual({ x: 0, y: 0, bulge: 0 });
    expect(path.vertices).toContainEqual({ x: 10, y: 10, bulge: 0 });
    // The arm's end, 10 mm wide, holds two arcs of 5 mm; the third edge then has no length and no vertex.
    const clamped = roundCorners(ell, 20, () => true);
    expect(clamped.radius).toBeCloseTo(5, 12);
    expect(
      edgesOf(clamped.path).every(
        (edge) => Math.hypot(edge.end[0] - edge.start[0], edge.end[1] - edge.start[1]) > 1e-6,
      ),
    ).toBe(true);
  });
});

it('a path run the other way has the same edges and the opposite area', () => {
  fc.assert(
    fc.property(convex, numberFrom(0.1, 20), (polygon, radius) => {
      const { path } = roundCorners(polygon, radius, (i) => i % 2 === 0);
      const back = reversed(path);
      expect(signedArea(back)).toBeCloseTo(-signedArea(path), 6);
      expect(contourLength(back)).toBeCloseTo(contourLength(path), 8);
      expect(reversed(back)).toEqual(path);
    }),
  );
});

describe('a notch', () => {
  const block: Point[] = [
    [0, 0],
    [100, 0],
    [100, 40],
    [0, 20],
  ];
  it('takes its rectangle from the edge that holds it', () => {
    const mouth = [
      [30, 0],
      [50, 0],
    ] as const;
    const cut = notched(block, mouth, squareFloor(mouth, 7));
    if (!cut) throw new Error('there is an edge');
    const expected = differenceD(
      [toPath(block)],
      [
        toPath([
          [30, -1],
          [50, -1],
          [50, 7],
          [30, 7],
        ]),
      ],
      FillRule.NonZero,
      6,
    );
    expect(areaOf(cut)).toBeCloseTo(areaIn(expected), 4);
    expect(cut).toHaveLength(8);
  });

  it('is refused off every edge, over a corner and against the edge', () => {
    expect(
      notched(
        block,
        [
          [30, 5],
          [50, 5],
        ],
        [],
      ),
    ).toBeNull();
    expect(
      notched(
        block,
        [
          [90, 0],
          [110, 0],
        ],
        [],
      ),
    ).toBeNull();
    expect(
      notched(
        block,
        [
          [50, 0],
          [30, 0],
        ],
        [],
      ),
    ).toBeNull();
  });
});

describe('area and its middle', () => {
  it('of polygons with arcs and holes are what many small triangles give', () => {
    fc.assert(
      fc.property(convex, numberFrom(1, 15), numberFrom(0.5, 3), (polygon, rounding, radius) => {
        const { path } = roundCorners(polygon, rounding, () => true);
        const [x, y] = momentsOf(path).centre;
        const hole = circle([x + 0.4, y - 0.3], radius);
        const { area, centre } = momentsOf(path, [hole]);
        const ring = flattened(path, 2000);
        const fan = (points: PathD): [number, number, number] =>
          points.reduce<[number, number, number]>(
            (sum, a, i) => {
              const b = points[(i + 1) % points.length] ?? a;
              const w = ((a.x - x) * (b.y - y) - (b.x - x) * (a.y - y)) / 2;
              return [sum[0] + w, sum[1] + (w * (a.x - x + b.x - x)) / 3, sum[2] + (w * (a.y - y + b.y - y)) / 3];
            },
            [0, 0, 0],
          );
        const [whole, mx, my] = fan(ring);
        const bored = Math.PI * radius ** 2;
        expect(Math.abs(area - (whole - bored)) / whole).toBeLessThan(1e-6);
        expect(centre[0]).toBeCloseTo(x + (mx - bored * 0.4) / (whole - bored), 3);
        expect(centre[1]).toBeCloseTo(y + (my + bored * 0.3) / (whole - bored), 3);
        expect(isInside(centre, path)).toBe(true);
      }),
      { numRuns: runs(40) },
    );
  });

  it('of a half disc lies 4r/3π from its straight side', () => {
    const half: Path = {
      kind: 'path',
      closed: true,
      vertices: [
        { x: 3, y: 0, bulge: 1 },
        { x: -3, y: 0, bulge: 0 },
      ],
    };
    const { area, centre } = momentsOf(moved(half, [100, 50]));
    expect(area).toBeCloseTo((Math.PI * 9) / 2, 12);
    expect(centre[0]).toBeCloseTo(100, 12);
    expect(centre[1]).toBeCloseTo(50 + 4 / Math.PI, 12);
    expect(contourLength(half)).toBeCloseTo(3 * Math.PI + 6, 12);
  });
});
