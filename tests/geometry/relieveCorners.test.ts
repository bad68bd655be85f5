import { areaPathsD, differenceD, FillRule, type PathD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { polygonPath, type Path } from '$lib/geometry/contour.ts';
import { edgesOf, pointAt, type ArcEdge } from '$lib/geometry/edge.ts';
import { figureFlaw } from '$lib/geometry/figureFlaw.ts';
import { growContour } from '$lib/geometry/growContour.ts';
import { apart } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';
import { relieveCorners } from '$lib/geometry/relieveCorners.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

const arcsOf = (path: Path): ArcEdge[] => edgesOf(path).filter((edge) => edge.kind === 'arc');
const flattened = (path: Path): PathD =>
  edgesOf(path).flatMap((edge) =>
    Array.from({ length: edge.kind === 'arc' ? 400 : 1 }, (_, i) => {
      const [x, y] = pointAt(edge, i / 400);
      return { x, y };
    }),
  );
/** What of one outline lies outside of the other, mm². */
const beyond = (one: Path, other: Path): number =>
  Math.abs(areaPathsD(differenceD([flattened(one)], [flattened(other)], FillRule.NonZero, 8)));

/** A square corner of wood cut out of a square: its one inner corner at the origin, the opening where x and y are positive. */
const L = polygonPath([
  [-20, -20],
  [20, -20],
  [20, 0],
  [0, 0],
  [0, 20],
  [-20, 20],
]);

/** A block with a notch of the angle, its corner at `at` and its walls 30 mm long, turned by an angle. */
function wedged(angle: number, turn: number, at: Point): Path {
  const [wide, high] = [30 * Math.sin(angle / 2), 30 * Math.cos(angle / 2)];
  const points: Point[] = [
    [-60, -60],
    [60, -60],
    [60, high],
    [wide, high],
    [0, 0],
    [-wide, high],
    [-60, high],
  ];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return polygonPath(points.map(([x, y]): Point => [at[0] + c * x - s * y, at[1] + s * x + c * y]));
}

const anyWedge = fc.record({
  angle: numberFrom(75, 110).map(radians),
  turn: numberFrom(-3, 3),
  at: fc.tuple(numberFrom(-500, 500), numberFrom(-500, 500)),
  radius: numberFrom(0.5, 6),
});

describe('relieved inner corners', () => {
  // By geometry: centre at r/√2 each way, r(1 − 1/√2) into each wall, (π/2 − 1)r² taken.
  it.each([
    [3.175, 1.1225],
    [6, 2.1213],
  ])('of 90° for a bit of %d mm have their centre %d mm each way from the corner', (bit, each) => {
    const radius = bit / 2;
    const relieved = relieveCorners(L, radius);
    const [arc] = arcsOf(relieved);
    expect(arc?.centre[0]).toBeCloseTo(each, 4);
    expect(arc?.centre[1]).toBeCloseTo(each, 4);
    expect(arc?.radius).toBeCloseTo(radius, 12);
    expect(arc?.sweep).toBeCloseTo(-Math.PI, 12);
    // The lowest point of its circle.
    expect(radius - (arc?.centre[1] ?? NaN)).toBeCloseTo(0.292893 * radius, 5);
    expect(signedArea(L) - signedArea(relieved)).toBeCloseTo((Math.PI / 2 - 1) * radius * radius, 9);
  });

  it('take the closed form’s area, pass through the corner, and never have less than the radius', () => {
    fc.assert(
      fc.property(anyWedge, ({ angle, turn, at, radius }) => {
        const sharp = wedged(angle, turn, at);
        const relieved = relieveCorners(sharp, radius);
        const arcs = arcsOf(relieved);
        expect(arcs).toHaveLength(1);
        const r = arcs[0]?.radius ?? NaN;
        expect(r).toBeGreaterThanOrEqual(radius * (1 - 1e-12));
        if (angle >= Math.PI / 2) expect(r).toBeCloseTo(radius, 9);
        expect(apart(arcs[0]?.centre ?? [NaN, NaN], at)).toBeCloseTo(r, 9);
        // The arc's segment less the corner's triangle.
        const sweep = 2 * Math.PI - 2 * angle;
        const triangle = ((2 * r * Math.cos(angle / 2)) ** 2 * Math.sin(angle)) / 2;
        expect(signedArea(sharp) - signedArea(relieved)).toBeCloseTo(
          (r * r * (sweep - Math.sin(sweep))) / 2 - triangle,
          6,
        );
      }),
    );
  });

  it('leave no wood where the sharp outline has none, so that what fits that one seats', () => {
    fc.assert(
      fc.property(anyWedge, ({ angle, turn, at, radius }) => {
        const sharp = wedged(angle, turn, at);
        const relieved = relieveCorners(sharp, radius);
        expect(beyond(relieved, sharp)).toBeLessThan(1e-4);
        expect(beyond(sharp, relieved)).toBeGreaterThan(0.1 * radius * radius);
        expect(figureFlaw(relieved, [], { path: 0, circle: 0 })).toBeNull();
      }),
      { numRuns: 40 },
    );
  });

  it('let a bit a little thinner all the way in', () => {
    fc.assert(
      fc.property(anyWedge, ({ angle, turn, at, radius }) => {
        const sharp = wedged(angle, turn, at);
        expect(growContour(relieveCorners(sharp, radius), 0.98 * radius)).not.toBeNull();
      }),
    );
  });

  it('are those of a hole too, all four of them, on the outside of it', () => {
    const hole = reversed(
      polygonPath([
        [0, 0],
        [30, 0],
        [30, 20],
        [0, 20],
      ]),
    );
    const relieved = relieveCorners(hole, 2);
    expect(arcsOf(relieved)).toHaveLength(4);
    expect(-signedArea(relieved)).toBeCloseTo(600 + 4 * (Math.PI / 2 - 1) * 4, 9);
  });

  it('are none in a convex outline, nor where a corner is round', () => {
    const convex = polygonPath([
      [0, 0],
      [30, 0],
      [20, 20],
    ]);
    expect(relieveCorners(convex, 2)).toBe(convex);
    const round = reversed(
      roundCorners(
        [
          [0, 0],
          [30, 0],
          [20, 20],
        ],
        1,
        () => true,
      ).path,
    );
    expect(relieveCorners(round, 2)).toBe(round);
  });

  const slot = (wide: number, deep: number, behind = 40): Path =>
    polygonPath([
      [-behind, -40],
      [wide + behind, -40],
      [wide + behind, 0],
      [wide, 0],
      [wide, -deep],
      [0, -deep],
      [0, 0],
      [-behind, 0],
    ]);

  it('are half circles in the walls of a slot too narrow for two arcs: the floor stays, the bit gets in, all that is square seats', () => {
    fc.assert(
      fc.property(numberFrom(0.5, 6), numberFrom(0, 1), numberFrom(0.01, 20), (radius, share, more) => {
        // From the half circle's mouth, which lets the bit in, to where two arcs have room: 2r to 4r·cos 45°.
        const wide = 2 * radius * (1.001 + share * (Math.SQRT2 - 1.002));
        const drawn = slot(wide, 2 * radius + more);
        const relieved = relieveCorners(drawn, radius);
        expect(figureFlaw(relieved, [], { path: 0, circle: 0 })).toBeNull();
        // Never more wood than drawn; less by two half circles.
        expect(beyond(relieved, drawn)).toBeLessThan(1e-6);
        expect(signedArea(drawn) - signedArea(relieved)).toBeCloseTo(Math.PI * radius * radius, 6);
        const edges = edgesOf(relieved);
        const floor = edges.find((edge) => edge.kind === 'straight' && edge.start[1] === edge.end[1] && edge.start[1] === -2 * radius - more); // prettier-ignore
        expect(floor && apart(floor.start, floor.end)).toBeCloseTo(wide, 9);
        // A bit a little under the relief finds its way to the floor and into both walls.
        const way = growContour(relieved, radius * 0.97);
        if (!way) throw new Error('the bit has a way');
        expect(Math.min(...way.vertices.filter(({ x }) => x >= -radius && x <= wide + radius).map(({ y }) => y))).toBeLessThan(-more); // prettier-ignore
        expect(way.vertices.some(({ bulge }) => bulge !== 0)).toBe(true);
      }),
      { numRuns: runs(200) },
    );
  });

  it('leave wood behind the half circles, or the corners sharp', () => {
    expect(arcsOf(relieveCorners(slot(2.4, 5, 1.01), 1))).toHaveLength(2);
    expect(arcsOf(relieveCorners(slot(2.4, 5, 1), 1))).toHaveLength(0);
  });

  it('stay sharp in a slot too narrow for two of them, or too shallow', () => {
    // In a square corner each takes 2r·cos 45° of both walls; half circles take 2r of a wall and let the bit in from 2r on.
    const both = 4 * Math.SQRT1_2;
    expect(arcsOf(relieveCorners(slot(both + 0.01, 5), 1))).toHaveLength(2);
    expect(arcsOf(relieveCorners(slot(2.01, 5), 1)).map(({ centre: [x] }) => x.toFixed(6))).toEqual([
      '2.010000',
      '0.000000',
    ]);
    expect(arcsOf(relieveCorners(slot(1.99, 5), 1))).toHaveLength(0);
    expect(arcsOf(relieveCorners(slot(2.01, 1.99), 1))).toHaveLength(0);
    expect(arcsOf(relieveCorners(slot(10, both / 2 + 0.01), 1))).toHaveLength(2);
    expect(arcsOf(relieveCorners(slot(10, both / 2 - 0.01), 1))).toHaveLength(0);
  });

  it('leave a floor with too thin a skin under it alone: half circles in the walls take none of it', () => {
    // A slot whose floor leaves a skin: of 1 mm radius a relief takes 0.2929 mm of it.
    const over = (skin: number): Path =>
      polygonPath([
        [-40, -10 - skin],
        [40, -10 - skin],
        [40, 0],
        [10, 0],
        [10, -10],
        [0, -10],
        [0, 0],
        [-40, 0],
      ]);
    const lowest = (skin: number) =>
      arcsOf(relieveCorners(over(skin), 1)).map(({ centre: [, y], radius }) => y - radius);
    expect(lowest(0.3).map((y) => y.toFixed(4))).toEqual(['-10.2929', '-10.2929']);
    expect(lowest(0.29)).toEqual([-10, -10]);
  });
});
