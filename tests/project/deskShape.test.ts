import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { flattened } from '$lib/geometry/flattened.ts';
import { gapWithin, isConvex, pointWithin } from '$lib/geometry/gapWithin.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import type { Point } from '$lib/geometry/point.ts';
import { deskPath } from '$lib/project/deskPath.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { DeskOutline } from '$lib/project/project.ts';
import { numberFrom } from '../numbers.ts';
import { demoWith } from '../projects.ts';
import { runs } from '../runs.ts';

const shapeOf = (outline: DeskOutline) => deskShape({ outline });
const lDesk: DeskOutline = { rule: 'l', width: 1600, depth: 700, return: { side: 'left', width: 700, length: 900 } };
const cornerDesk: DeskOutline = {
  rule: 'corner',
  left: 1200,
  right: 1200,
  leftDepth: 800,
  rightDepth: 800,
  front: 400 * Math.SQRT2,
};
const bowed: DeskOutline = { rule: 'bowed', width: 1400, depth: 700, bow: 120 };

const outline: fc.Arbitrary<DeskOutline> = fc.oneof(
  fc
    .tuple(numberFrom(400, 3000), numberFrom(300, 1500), fc.oneof(fc.constant(0), numberFrom(1, 150)))
    .map(([width, depth, corner]): DeskOutline => ({ rule: 'rectangle', width, depth, corner })),
  fc
    .tuple(numberFrom(600, 3000), numberFrom(400, 1500), numberFrom(-290, 290))
    .map(([width, depth, bow]): DeskOutline => ({ rule: 'bowed', width, depth, bow })),
  fc
    .tuple(
      numberFrom(300, 1500),
      numberFrom(300, 1500),
      numberFrom(300, 900),
      numberFrom(300, 900),
      numberFrom(150, 900),
    )
    .map(([left, right, leftDepth, rightDepth, front]): DeskOutline => {
      const cut = front * Math.SQRT1_2;
      return {
        rule: 'corner',
        left: left + rightDepth + cut,
        right: right + leftDepth + cut,
        leftDepth,
        rightDepth,
        front,
      };
    }),
  fc
    .tuple(
      numberFrom(900, 3000),
      numberFrom(400, 1000),
      numberFrom(200, 700),
      numberFrom(100, 1500),
      fc.constantFrom('left' as const, 'right' as const),
    )
    .map(([width, depth, wide, length, side]): DeskOutline => ({
      rule: 'l',
      width,
      depth,
      return: { side, width: wide, length },
    })),
);

describe('a desk’s outline', () => {
  // Areas and centroids worked out apart from this code by the shoelace formula, the bow by its segment.
  test('of an L has the area and the middle of its two rectangles, and a notch that is not desk', () => {
    const { path, extent } = shapeOf(lDesk);
    const { area, centre } = momentsOf(path);
    expect(area).toBeCloseTo(1_750_000, 6);
    // In the frame of its outer corner, the return's end: x right along the back edge, y towards the listener.
    expect([centre[0] - extent.left, extent.top - centre[1]]).toEqual([expect.closeTo(638, 0), expect.closeTo(638, 0)]);
    const at = (x: number, y: number) => pointWithin(shapeOf(lDesk), [extent.left + x, extent.top - y]).gap;
    expect(at(1000, 1000)).toBeLessThan(0);
    expect(at(300, 1500)).toBeGreaterThan(0);
  });

  test('of a corner desk has those of the square less its cut corner', () => {
    const { path, points } = shapeOf(cornerDesk);
    const { area, centre } = momentsOf(path);
    expect(points).toHaveLength(5);
    expect(area).toBeCloseTo(1_360_000, 6);
    // The centroid (627.4510, 627.4510) from the square's cut corner lies on the middle line, so far from the front.
    expect(centre[0]).toBeCloseTo(0, 9);
    expect(centre[1]).toBeCloseTo(627.451 * Math.SQRT2 - 200 * Math.SQRT2, 3);
  });

  test('of a bow is its chord’s rectangle and the segment, and chords lose a quarter of it each time they double', () => {
    const path = deskPath(bowed);
    const chordal = 1400 * (700 - 120);
    expect(signedArea(path) - chordal).toBeCloseTo(112_655.549, 3);
    const [arc] = path.vertices;
    expect(arc?.bulge).toBeCloseTo(240 / 1400, 12);
    const radius = 2101.6667;
    const halfAngle = (19.45516 * Math.PI) / 180;
    for (const [count, lost] of [
      [8, 1800.679],
      [16, 450.291],
      [32, 112.58],
      [64, 28.146],
    ] as const) {
      // So many chords rise this much each.
      const sagitta = radius * (1 - Math.cos(halfAngle / count)) * 1.0001;
      const points = flattened(path, sagitta);
      expect(points).toHaveLength(count + 3);
      const polygon = points.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
        return sum + (x * nextY - nextX * y) / 2;
      }, 0);
      expect(signedArea(path) - polygon).toBeCloseTo(lost, 2);
    }
  });

  test('runs counter-clockwise, with the origin on its front edge and the desk behind it', () => {
    fc.assert(
      fc.property(outline, (one) => {
        const shape = shapeOf(one);
        expect(signedArea(shape.path)).toBeGreaterThan(0);
        expect(shape.convex).toBe(isConvex(shape.points));
        expect(Math.abs(pointWithin({ ...shape, convex: false }, [0, 0]).gap)).toBeLessThan(0.11);
        expect(pointWithin(shape, [0, 1]).gap).toBeGreaterThan(0);
        expect(pointWithin(shape, [0, -1]).gap).toBeLessThan(0);
        expect(checkProject(demoWith({ '/layouts/0/desk/outline': one, '/layouts/0/room': {} }))).toMatchObject({
          ok: true,
        });
      }),
      { numRuns: runs(300) },
    );
  });

  test('given corner by corner, either way round, is the rule’s own', () => {
    fc.assert(
      fc.property(outline, fc.boolean(), (one, turned) => {
        const shape = shapeOf(one);
        const corners = shape.points.map(([x, y]): [number, number] => [x, y]);
        const free = shapeOf({ rule: 'outline', points: turned ? corners.toReversed() : corners });
        const foot: Point[] = [[-80, 60], [80, 60], [80, 250], [-80, 250]]; // prettier-ignore
        expect(free.convex).toBe(shape.convex);
        expect(free.depth).toBeCloseTo(shape.depth, 9);
        expect(gapWithin(free, foot).gap).toBeCloseTo(gapWithin(shape, foot).gap, 9);
      }),
      { numRuns: runs(200) },
    );
  });
});

describe('how far something lies within an outline', () => {
  const gap = (one: DeskOutline, ...corners: Point[]): number => gapWithin(shapeOf(one), corners).gap;
  const box = (x: number, y: number, half = 50): Point[] => [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];

  test('counts to the nearest edge, and over it', () => {
    const desk: DeskOutline = { rule: 'rectangle', width: 1000, depth: 600, corner: 0 };
    expect(gap(desk, ...box(0, 300))).toBe(250);
    expect(gap(desk, ...box(480, 300))).toBe(-30);
    expect(gap(desk, ...box(0, 20))).toBe(-30);
    // Past a corner: the further of the two.
    expect(gap(desk, ...box(480, 20))).toBe(-30);
    expect(gap(desk, ...box(490, 20))).toBe(-40);
  });

  test('minds the notch of an L, at its corner too', () => {
    // The return ends at x = −450; the notch lies right of that and before the front edge.
    expect(gap(lDesk, ...box(-450, -300))).toBeCloseTo(-50, 9);
    expect(gap(lDesk, ...box(-520, -300))).toBeCloseTo(20, 9);
    // Over the inner corner by 30 × 30 mm with all else on the desk: 30 mm of it hang in the air.
    expect(gap(lDesk, ...box(-470, 20))).toBeLessThan(0);
    expect(gap(lDesk, ...box(-500, 50))).toBeCloseTo(0, 9);
    // Corners on the desk, the middle over the notch.
    expect(gap(lDesk, [-470, -120], [-460, -130], [-320, 10], [-330, 20])).toBeLessThan(0);
  });

  test('is the same whichever way the whole is turned', () => {
    fc.assert(
      fc.property(outline, numberFrom(-900, 900), numberFrom(-600, 900), numberFrom(0, 7), (one, x, y, angle) => {
        const shape = shapeOf(one);
        const turn = ([a, b]: Point): Point => [
          a * Math.cos(angle) - b * Math.sin(angle),
          a * Math.sin(angle) + b * Math.cos(angle),
        ];
        const turned = { points: shape.points.map(turn), convex: shape.convex };
        expect(gapWithin(turned, box(x, y).map(turn)).gap).toBeCloseTo(gapWithin(shape, box(x, y)).gap, 6);
        // A convex outline gives the same as one that is looked at edge by edge, while it is on the desk.
        const plain = gapWithin(shape, box(x, y)).gap;
        if (shape.convex && plain > 0)
          expect(gapWithin({ ...shape, convex: false }, box(x, y)).gap).toBeCloseTo(plain, 6);
      }),
      { numRuns: runs(300) },
    );
  });
});

const at = '/layouts/0/desk/outline';
test.each<[DeskOutline, string]>([
  [
    { rule: 'rectangle', width: 1400, depth: 700, corner: 400 },
    `${at}/corner: expected a length of 350 mm at most so that two corners fit each edge, got 400`,
  ],
  [{ ...bowed, bow: 700 }, `${at}/bow: expected a bow under the depth, 700 mm, got 700`],
  [
    { ...bowed, bow: -800 },
    `${at}/bow: expected a length of 700 mm at most to either side, so that the arc is half a circle at most, got 800`,
  ],
  [
    { ...cornerDesk, left: 1000 },
    `${at}/left: expected a wing of at least 1200 mm, the other’s depth and what the front takes of it, got 1000`,
  ],
  [
    { ...lDesk, return: { side: 'left', width: 1600, length: 900 } },
    `${at}/return/width: expected a length of 1500 mm at most so that some of the front edge is left, got 1600`,
  ],
  [
    { rule: 'outline', points: [[-700, 0], [700, 0], [-700, 700], [700, 700]] }, // prettier-ignore
    `${at}/points: expected an outline that neither crosses nor touches itself, got one that does at 0, 350 mm`,
  ],
  [
    { rule: 'outline', points: [[-700, 50], [700, 50], [700, 700], [-700, 700]] }, // prettier-ignore
    `${at}/points: expected a front edge through x 0, y 0 with the desk behind it, got none: the listener sits straight before that point`,
  ],
  [
    { rule: 'outline', points: [[-700, -700], [700, -700], [700, 0], [-700, 0]] }, // prettier-ignore
    `${at}/points: expected a front edge through x 0, y 0 with the desk behind it, got none: the listener sits straight before that point`,
  ],
])('%j is refused', (one, line) => {
  const checked = checkProject(demoWith({ '/layouts/0/desk/outline': one, '/layouts/0/room': {} }));
  expect(checked.ok ? [] : checked.faults.map(faultLine)).toEqual([line]);
});
