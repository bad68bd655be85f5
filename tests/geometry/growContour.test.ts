import fc from 'fast-check';
import { EndType, JoinType, areaPathsD, differenceD, FillRule, inflatePathsD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { MITRE_LIMIT } from '$lib/geometry/growCorner.ts';
import { circle, openPath, polygonPath, type Path, type Vertex } from '$lib/geometry/contour.ts';
import { cornersOf, lippedCorners, wedgeCorners } from '../workshop/shapes.ts';
import { edgeGap } from '$lib/geometry/edgeGap.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { growContour } from '$lib/geometry/growContour.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Point } from '$lib/geometry/point.ts';

const path = (...vertices: readonly (readonly [number, number, number])[]): Path => ({
  kind: 'path',
  closed: true,
  vertices: vertices.map(([x, y, bulge]): Vertex => ({ x, y, bulge })),
});
const quarter = Math.tan(Math.PI / 8);
const grown = (contour: Path, distance: number): Path => {
  const found = growContour(contour, distance);
  if (found === null) throw new Error('expected a contour');
  return found;
};
const reversed = (points: readonly Point[]): Point[] => [...points].reverse();

describe('growing straight edges', () => {
  it('moves every side of a rectangle by the distance, whichever way it runs', () => {
    const corners: Point[] = [
      [0, 0],
      [4, 0],
      [4, 2],
      [0, 2],
    ];
    expect(cornersOf(grown(polygonPath(corners), 0.1)).map(({ x, y }) => [x, y])).toEqual([
      [-0.1, -0.1],
      [4.1, -0.1],
      [4.1, 2.1],
      [-0.1, 2.1],
    ]);
    expect(signedArea(grown(polygonPath(reversed(corners)), 0.1))).toBeCloseTo(-4.2 * 2.2, 12);
    expect(signedArea(grown(polygonPath(corners), -0.1))).toBeCloseTo(3.8 * 1.8, 12);
  });

  it('agrees with clipper2 on wedges, with and without a lip, grown and shrunk', () => {
    const anyOutline = fc.oneof(
      fc
        .tuple(fc.double({ min: 30, max: 300, noNaN: true }), fc.double({ min: 3, max: 20, noNaN: true }))
        .map(([run, thin]) => wedgeCorners(run, thin, thin + run / 4)),
      fc.double({ min: 60, max: 300, noNaN: true }).map((run) => lippedCorners(run, 8, 8 + run / 5, 30, 12)),
    );
    fc.assert(
      fc.property(anyOutline, fc.double({ min: -1.4, max: 3, noNaN: true }), (corners, distance) => {
        const ours = cornersOf(grown(polygonPath(corners), distance));
        const subject = [corners.map(([x, y]) => ({ x, y }))];
        const theirs = inflatePathsD(subject, distance, JoinType.Miter, EndType.Polygon, MITRE_LIMIT, 5);
        // clipper2 works on whole hundred-thousandths: an edge of 700 mm round the outline may be off by 0.007 mm².
        expect(areaPathsD([ours])).toBeCloseTo(areaPathsD(theirs), 1);
        const [more, less] = [
          differenceD([ours], theirs, FillRule.NonZero, 5),
          differenceD(theirs, [ours], FillRule.NonZero, 5),
        ];
        expect(Math.abs(areaPathsD(more)) + Math.abs(areaPathsD(less))).toBeLessThan(0.02);
      }),
    );
  });

  it('squares a corner sharper than the mitre limit at one distance from it', () => {
    const sharp = polygonPath([
      [0, 0],
      [100, 0],
      [100, 10],
    ]);
    const left = Math.min(...grown(sharp, 1).vertices.map(({ x }) => x));
    const theirs = inflatePathsD([cornersOf(sharp)], 1, JoinType.Miter, EndType.Polygon, MITRE_LIMIT, 5);
    expect(left).toBeGreaterThan(-1.2);
    expect(left).toBeCloseTo(Math.min(...theirs.flat().map(({ x }) => x)), 4);
    expect(grown(sharp, 1).vertices).toHaveLength(4);
  });
});

describe('growing arcs', () => {
  const rounded = path(
    [1, 0, 0],
    [9, 0, quarter],
    [10, 1, 0],
    [10, 5, quarter],
    [9, 6, 0],
    [1, 6, quarter],
    [0, 5, 0],
    [0, 1, quarter],
  );

  it('keeps the centre and the bulge and changes the radius', () => {
    const out = grown(rounded, 0.5);
    expect(signedArea(out)).toBeCloseTo(11 * 7 - (4 - Math.PI) * 1.5 ** 2, 12);
    for (const edge of edgesOf(out)) if (edge.kind === 'arc') expect(edge.radius).toBeCloseTo(1.5, 12);
    expect(signedArea(grown(rounded, -0.5))).toBeCloseTo(9 * 5 - (4 - Math.PI) * 0.5 ** 2, 12);
  });

  it('has no answer where an arc loses its radius', () => {
    expect(growContour(rounded, -1.01)).toBeNull();
    expect(growContour(circle([3, 4], 0.1), -0.1)).toBeNull();
    expect(growContour(circle([3, 4], 0.1), 0.1)).toEqual(circle([3, 4], 0.2));
  });

  it('trims an arc where it overlaps a straight edge and bridges the gap on the other side', () => {
    // A half disc: its two corners are right angles between the chord and the arc.
    const half = path([-5, 0, 0], [5, 0, 1]);
    const inner = grown(half, -1);
    const angle = Math.asin(1 / 4);
    const segment = (4 ** 2 * (Math.PI - 2 * angle - Math.sin(Math.PI - 2 * angle))) / 2;
    expect(signedArea(inner)).toBeCloseTo(segment, 10);
    const outer = grown(half, 1);
    expect(signedArea(outer)).toBeCloseTo((Math.PI * 6 ** 2) / 2 + 12, 10);
  });

  it('trims two arcs at the point where both radii meet', () => {
    // A lens of two circles of radius 5, centres 6 apart; 1 mm inside it, two of radius 4.
    const lens = path([0, -4, Math.tan(Math.asin(4 / 5) / 2)], [0, 4, Math.tan(Math.asin(4 / 5) / 2)]);
    const tips = grown(lens, -1).vertices.map(({ y }) => Math.abs(y));
    expect(tips[0]).toBeCloseTo(Math.sqrt(4 ** 2 - 3 ** 2), 10);
    expect(tips[1]).toBeCloseTo(Math.sqrt(7), 10);
  });

  it('keeps its distance from the origin everywhere and touches it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -90, max: 90 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: -60, max: 60 }).filter((tenths) => tenths !== 0),
        (bulges, tenths) => {
          const distance = tenths / 10;
          const corners = wedgeCorners(60, 40, 50);
          const contour = path(...corners.map(([x, y], i) => [x, y, (bulges[i] ?? 0) / 200] as const));
          const found = growContour(contour, distance);
          fc.pre(found !== null);
          const gaps = edgesOf(found).map((edge) => Math.min(...edgesOf(contour).map((other) => edgeGap(edge, other))));
          expect(Math.min(...gaps)).toBeCloseTo(Math.abs(distance), 6);
          expect(Math.sign(Math.abs(signedArea(found)) - Math.abs(signedArea(contour)))).toBe(Math.sign(distance));
        },
      ),
    );
  });
});

describe('no answer', () => {
  const notched = (width: number): Path =>
    polygonPath([
      [0, 0],
      [50, 0],
      [50, 20],
      [25 + width / 2, 20],
      [25 + width / 2, 10],
      [25 - width / 2, 10],
      [25 - width / 2, 20],
      [0, 20],
    ]);

  it('refuses a notch narrower than twice the distance, and takes one just wider', () => {
    expect(growContour(notched(0.199), 0.1)).toBeNull();
    expect(growContour(notched(0.201), 0.1)).not.toBeNull();
  });

  it('refuses to shrink a slot that is swallowed', () => {
    const slot = polygonPath(wedgeCorners(10, 0.3, 0.3));
    expect(growContour(slot, -0.151)).toBeNull();
    expect(growContour(slot, -2)).toBeNull();
    expect(growContour(slot, -0.149)).not.toBeNull();
  });

  it('refuses open paths and leaves everything alone at distance 0', () => {
    const open = openPath([
      [0, 0],
      [1, 1],
    ]);
    expect(growContour(open, 1)).toBeNull();
    expect(growContour(notched(1), 0)).toEqual(notched(1));
  });
});
