import {
  EndType,
  FillRule,
  JoinType,
  areaPathsD,
  differenceD,
  inflatePathsD,
  type PathD,
  type PathsD,
} from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { anyWedge, cornersOf, partOf, wedgeCorners } from '../workshop/shapes.ts';
import { cutPath, type CutPath } from '$lib/workshop/kerf.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Part } from '$lib/workshop/part.ts';
import { runs } from '../runs.ts';

/** What a round beam of the kerf's width leaves standing inside a path that its middle follows, and what it takes away. */
function burn(path: PathD, kerf: number): { kept: number; opening: number } {
  const arcTolerance = 0.00002;
  const groove = inflatePathsD([path], kerf / 2, JoinType.Round, EndType.Joined, 2, 6, arcTolerance);
  const solid: PathsD = [path];
  const kept = Math.abs(areaPathsD(differenceD(solid, groove, FillRule.NonZero, 6)));
  const outer = inflatePathsD([path], kerf / 2, JoinType.Round, EndType.Polygon, 2, 6, arcTolerance);
  return { kept, opening: Math.abs(areaPathsD(outer)) };
}

const cut = (part: Part, kerf: number): CutPath => {
  const result = cutPath(part, kerf);
  if (!result.ok) throw new Error(result.faults.map(faultLine).join());
  return result.value;
};

const rectangle = (width: number, height: number) =>
  polygonPath([
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]);

/**
 * Source: a cutting service's guide (read): with a kerf of 0.2 mm, a line drawn 2.0 × 4.0 mm and cut down its middle gives
 * a part of 1.8 × 3.8 mm or a hole of 2.2 × 4.2 mm.
 */
describe('the 2.0 × 4.0 mm example, kerf 0.2', () => {
  const drawn = cornersOf(rectangle(2, 4));

  it('the simulated beam gives what the guide says for the line as drawn', () => {
    expect(burn(drawn, 0.2).kept).toBeCloseTo(1.8 * 3.8, 4);
    // The opening's corners are rounded by the beam: four quarter discs instead of four squares of half a kerf.
    expect(burn(drawn, 0.2).opening).toBeCloseTo(2.2 * 4.2 - (4 - Math.PI) * 0.1 ** 2, 4);
  });

  it('a finished part of 2.0 × 4.0 is cut along 2.2 × 4.2', () => {
    const { outside } = cut(partOf('tab', rectangle(2, 4)), 0.2);
    expect(outside.vertices.map(({ x, y }) => [Number(x.toFixed(12)), Number(y.toFixed(12))])).toEqual([
      [-0.1, -0.1],
      [2.1, -0.1],
      [2.1, 4.1],
      [-0.1, 4.1],
    ]);
    expect(burn(cornersOf(outside), 0.2).kept).toBeCloseTo(2 * 4, 4);
  });

  it('a finished hole of 2.0 × 4.0 is cut along 1.8 × 3.8', () => {
    const hole = polygonPath([
      [2, 2],
      [2, 6],
      [4, 6],
      [4, 2],
    ]);
    const path = cut(partOf('tab', rectangle(8, 8), { inside: [hole] }), 0.2).inside[0];
    if (path?.kind !== 'path') throw new Error('expected a path');
    expect(signedArea(path)).toBeCloseTo(-1.8 * 3.8, 12);
    expect(burn(cornersOf(path), 0.2).opening).toBeCloseTo(2 * 4 - (4 - Math.PI) * 0.1 ** 2, 4);
  });
});

describe('any wedge, cut by a simulated beam', () => {
  it('comes out at its finished size', () => {
    fc.assert(
      fc.property(anyWedge, fc.integer({ min: 5, max: 40 }), (part, hundredths) => {
        const kerf = hundredths / 100;
        const { outside } = cut(part, kerf);
        // At an inside corner the round beam leaves a fillet of half a kerf; clipper2 rounds to 0.00001 mm.
        const fillets = 2 * kerf ** 2;
        expect(burn(cornersOf(outside), kerf).kept).toBeGreaterThan(signedArea(part.outside) - 0.02);
        expect(burn(cornersOf(outside), kerf).kept).toBeLessThan(signedArea(part.outside) + fillets + 0.02);
      }),
      { numRuns: runs(60) },
    );
  });

  it('keeps a very thin end, whose mitre is squared off', () => {
    const part = partOf('sliver', polygonPath(wedgeCorners(150, 0.5, 10).slice(0, 3)));
    expect(burn(cornersOf(cut(part, 0.3).outside), 0.3).kept).toBeCloseTo(signedArea(part.outside), 2);
  });
});
