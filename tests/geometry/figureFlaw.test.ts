import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, openPath, polygonPath, type Circle, type Path } from '$lib/geometry/contour.ts';
import { figureFlaw } from '$lib/geometry/figureFlaw.ts';
import { moved } from '$lib/geometry/moved.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import { numberFrom } from '../numbers.ts';

const least = { path: 8, circle: 2 };
const corners = (width: number, height: number): readonly Point[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
const board = polygonPath(corners(100, 60));
const round = (width: number, height: number, radius: number): Path =>
  roundCorners(corners(width, height), radius, () => true).path;
const windowAt = (x: number, y: number, width = 20, height = 20): Path =>
  moved(reversed(polygonPath(corners(width, height))), [x, y]);

const flawOf = (outside: Path, ...holes: (Path | Circle)[]) => {
  const flaw = figureFlaw(outside, holes, least);
  return flaw && { what: flaw.what, hole: flaw.hole };
};

describe('a figure that can be cut', () => {
  it.each<[string, Path, (Path | Circle)[]]>([
    ['a board', board, []],
    ['rounded corners', round(100, 60, 12), []],
    ['a stadium, whose arcs meet straight runs smoothly', round(100, 60, 30), []],
    ['a disc of four arcs', round(60, 60, 30), []],
    ['a window just at its web', board, [windowAt(8, 8)]],
    ['a bore just at its wall', board, [circle([5, 5], 3)]],
    ['two windows a web apart', board, [windowAt(8, 8), windowAt(36, 8)]],
    ['two bores their own diameter apart', board, [circle([20, 20], 0.5), circle([22, 20], 0.5)]],
    // Files are written to 0.001 mm; what rounding leaves between two arcs is no edge.
    [
      'an edge of dust',
      polygonPath([
        [0, 0],
        [100, 0],
        [100 + 1e-9, 1e-9],
        [100, 60],
        [0, 60],
      ]),
      [],
    ],
  ])('%s', (_, outside, holes) => {
    expect(flawOf(outside, ...holes)).toBeNull();
  });
});

describe('a figure that cannot', () => {
  it.each<[string, Path, (Path | Circle)[], ReturnType<typeof flawOf>]>([
    ['an open path', openPath(corners(10, 10)), [], { what: 'not a closed line', hole: null }],
    [
      'a corner that is no number',
      polygonPath([
        [0, 0],
        [NaN, 0],
        [10, 10],
      ]),
      [],
      { what: 'not a closed line', hole: null },
    ],
    [
      'two corners',
      polygonPath([
        [0, 0],
        [10, 0],
      ]),
      [],
      { what: 'crosses itself', hole: null },
    ],
    ['a clockwise outside', reversed(board), [], { what: 'the wrong way round', hole: null }],
    ['a counter-clockwise hole', board, [reversed(windowAt(20, 20))], { what: 'the wrong way round', hole: 0 }],
    [
      'a bow tie',
      polygonPath([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
      [],
      { what: 'crosses itself', hole: null },
    ],
    [
      'a notch that leaves its part',
      polygonPath([
        [0, 0],
        [50, 0],
        [50, 70],
        [60, 70],
        [60, 0],
        [100, 0],
        [100, 60],
        [0, 60],
      ]),
      [],
      { what: 'crosses itself', hole: null },
    ],
    [
      'a notch that touches the far edge',
      polygonPath([
        [0, 0],
        [50, 0],
        [50, 60],
        [60, 60],
        [60, 0],
        [100, 0],
        [100, 60],
        [0, 60],
      ]),
      [],
      { what: 'crosses itself', hole: null },
    ],
    [
      'a spike',
      polygonPath([
        [0, 0],
        [100, 0],
        [100, 60],
        [50, 60],
        [50, 90],
        [50, 60],
        [0, 60],
      ]),
      [],
      { what: 'crosses itself', hole: null },
    ],
    [
      'a wall without width',
      polygonPath([
        [0, 0],
        [0, 5],
        [100, 5],
        [100, 0],
        [100, 60],
        [0, 60],
      ]),
      [],
      { what: 'crosses itself', hole: null },
    ],
    [
      'a bulge through the far edge',
      {
        kind: 'path',
        closed: true,
        vertices: [
          { x: 0, y: 0, bulge: -1 },
          { x: 100, y: 0, bulge: 0 },
          { x: 100, y: 40, bulge: 0 },
          { x: 0, y: 40, bulge: 0 },
        ],
      },
      [],
      { what: 'crosses itself', hole: null },
    ],
    ['a hole across the edge', board, [windowAt(90, 20)], { what: 'runs off the part', hole: 0 }],
    ['a hole beside the part', board, [circle([130, 20], 4)], { what: 'runs off the part', hole: 0 }],
    [
      'a part in a hole',
      board,
      [reversed(moved(polygonPath(corners(140, 100)), [-20, -20]))],
      { what: 'runs off the part', hole: 0 },
    ],
    ['a window in a rounded corner', round(100, 60, 30), [windowAt(10, 10)], { what: 'too near the outside', hole: 0 }],
    ['a thin web', board, [windowAt(7.99, 8)], { what: 'too near the outside', hole: 0 }],
    ['a thin wall', board, [circle([4.99, 20], 3)], { what: 'too near the outside', hole: 0 }],
    [
      'windows too near each other',
      board,
      [windowAt(8, 8), windowAt(35.9, 8)],
      { what: 'too near another hole', hole: 1 },
    ],
    [
      'a bore in a window',
      board,
      [windowAt(8, 8, 40, 40), circle([28, 28], 3)],
      { what: 'too near another hole', hole: 1 },
    ],
    ['a hole twice', board, [circle([20, 20], 3), circle([20, 20], 3)], { what: 'too near another hole', hole: 1 }],
  ])('%s', (_, outside, holes, flaw) => {
    expect(flawOf(outside, ...holes)).toEqual(flaw);
  });

  it('says how much wood there is, and where', () => {
    expect(figureFlaw(board, [windowAt(5, 20)], least)).toMatchObject({ found: expect.closeTo(5, 9), least: 8 });
  });
});

it('holds for a rounded board with a window wherever it is, exactly where the web is kept', () => {
  const seen = { good: 0, bad: 0 };
  fc.assert(
    fc.property(numberFrom(0, 30), numberFrom(0, 70), numberFrom(0, 40), numberFrom(2, 25), (radius, x, y, size) => {
      const flaw = figureFlaw(round(100, 60, radius), [windowAt(x, y, size, size)], least);
      // A corner of the window in the reach of a rounded corner is as far from it as from its circle.
      const gap = Math.min(
        ...[x, x + size].flatMap((u) =>
          [y, y + size].map((v) => {
            const [right, up] = [Math.min(u, 100 - u), Math.min(v, 60 - v)];
            const beside = Math.min(right, up);
            return right < radius && up < radius
              ? Math.min(beside, radius - Math.hypot(radius - right, radius - up))
              : beside;
          }),
        ),
      );
      fc.pre(Math.abs(gap - least.path) > 1e-5 && Math.abs(gap) > 1e-5);
      if (gap > least.path) {
        seen.good++;
        expect(flaw).toBeNull();
      } else {
        seen.bad++;
        expect(flaw?.what).toBe(gap > 0 ? 'too near the outside' : 'runs off the part');
      }
    }),
    { numRuns: 400 },
  );
  expect(Math.min(seen.good, seen.bad)).toBeGreaterThan(40);
});
