import fc from 'fast-check';
import { FillRule, areaPathsD, intersectD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { anyWedge, cornersOf, partOf, wedge } from '../shapes.ts';
import { circle, polygonPath, type Path } from '$lib/geometry/contour.ts';
import { edgeGap } from '$lib/geometry/edgeGap.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import type { Placement, Sheet } from '$lib/workshop/part.ts';
import { runs } from '../../runs.ts';

const square = (size: number): Path =>
  polygonPath([
    [0, 0],
    [size, 0],
    [size, size],
    [0, size],
  ]);
const tile = partOf('tile', square(10), { quantity: 2 });
const at = (x: number, y: number, part = 'tile', turn = 0): Placement => ({ part, x, y, turn });
const sheet = (...placements: Placement[]): Sheet => ({
  stock: 'board',
  number: 1,
  width: 100,
  height: 100,
  placements,
  fill: 0,
});
const messages = (placements: Placement[], spacing: number, margin: number, parts = [tile]): string[] =>
  layoutFaults([sheet(...placements)], parts, spacing, margin).map(faultLine);

describe('layoutFaults', () => {
  it('says nothing of a sound sheet, just at the spacing and the margin', () => {
    expect(messages([at(5, 5), at(17, 5)], 2, 5)).toEqual([]);
    expect(messages([at(15, 15, 'tile', Math.PI), at(17, 5)], 2, 5)).toEqual([]);
  });

  it('measures the gap between neighbours, over corners too', () => {
    expect(messages([at(5, 5), at(16.9, 5)], 2, 5)).toEqual([
      '/sheets/0/placements/0: expected 2 mm between part "tile" and "tile" (/sheets/0/placements/1), got 1.900 mm',
    ]);
    expect(messages([at(5, 5), at(16.4, 16.4)], 2, 5)).toEqual([
      '/sheets/0/placements/0: expected 2 mm between part "tile" and "tile" (/sheets/0/placements/1), got 1.980 mm',
    ]);
    expect(messages([at(5, 5), at(16.5, 16.5)], 2, 5)).toEqual([]);
  });

  it('sees the margin on every side and a place that is not a number', () => {
    const gap = (x: number, y: number): string[] => messages([at(x, y), at(40, 40)], 0, 5);
    const expected = (got: string) => [
      `/sheets/0/placements/0: expected part "tile" at least 5 mm from the sheet's edge, got ${got} mm`,
    ];
    expect(gap(4.9, 20)).toEqual(expected('4.900'));
    expect(gap(20, 4)).toEqual(expected('4.000'));
    expect(gap(86, 20)).toEqual(expected('4.000'));
    expect(gap(20, 95)).toEqual(expected('-5.000'));
    expect(gap(NaN, 20)).toEqual(expected('NaN'));
  });

  it('tells overlap, containment and coincidence from touching', () => {
    const overlap = [
      '/sheets/0/placements/0: expected part "tile" clear of "tile" (/sheets/0/placements/1), got an overlap',
    ];
    expect(messages([at(5, 5), at(15, 5)], 0, 0)).toEqual([]);
    expect(messages([at(5, 5), at(15, 15)], 0, 0)).toEqual([]);
    expect(messages([at(5, 5), at(14.9, 5)], 0, 0)).toEqual(overlap);
    expect(messages([at(5, 5), at(5, 5)], 0, 0)).toEqual(overlap);
    const frame = partOf('frame', square(50), { inside: [circle([25, 25], 20)] });
    expect(messages([at(5, 5, 'frame'), at(25, 25)], 0, 0, [frame, { ...tile, quantity: 1 }])).toEqual([
      '/sheets/0/placements/0: expected part "frame" clear of "tile" (/sheets/0/placements/1), got an overlap',
    ]);
    const bar = partOf(
      'bar',
      polygonPath([
        [0, 0],
        [30, 0],
        [30, 4],
        [0, 4],
      ]),
      { quantity: 2 },
    );
    expect(messages([at(20, 30, 'bar'), at(37, 17, 'bar', Math.PI / 2)], 0, 0, [bar])).toHaveLength(1);
  });

  it('counts copies and knows the parts of its stock', () => {
    expect(messages([at(5, 5)], 0, 0)).toEqual(['/sheets: expected 2 of part "tile", got 1']);
    expect(messages([at(5, 5), at(20, 5), at(40, 40, 'cog')], 0, 0)).toEqual([
      '/sheets/0/placements/2: expected a part of "board", got "cog"',
    ]);
    expect(messages([at(5, 5), at(20, 5)], 0, 0, [{ ...tile, stock: 'oak' }])).toHaveLength(2);
  });

  it('agrees with clipper2 on overlap, and with the true distance on spacing, for wedges anywhere', () => {
    const place = fc.record({
      x: fc.integer({ min: 300, max: 700 }),
      y: fc.integer({ min: 300, max: 700 }),
      degrees: fc.integer({ min: 0, max: 359 }),
    });
    fc.assert(
      fc.property(anyWedge, place, place, fc.integer({ min: 1, max: 60 }), (part, a, b, spacing) => {
        const placements = [a, b].map(({ x, y, degrees }) => at(x, y, 'slice', (degrees * Math.PI) / 180));
        const outlines = placements.map((placement) => placedContour(part.outside, placement));
        const common = intersectD(
          [cornersOf(outlines[0] ?? part.outside)],
          [cornersOf(outlines[1] ?? part.outside)],
          FillRule.NonZero,
          5,
        );
        const faults = layoutFaults(
          [{ ...sheet(...placements), width: 1000, height: 1000 }],
          [{ ...part, quantity: 2 }],
          spacing,
          0,
        );
        const area = Math.abs(areaPathsD(common));
        fc.pre(area === 0 || area > 0.01);
        expect(faults.some((fault) => faultLine(fault).includes('overlap'))).toBe(area > 0);
        const [first, second] = outlines.map(edgesOf);
        const gap = Math.min(...(first ?? []).flatMap((edge) => (second ?? []).map((other) => edgeGap(edge, other))));
        expect(faults.length > 0).toBe(area > 0 || gap < spacing - 1e-6);
      }),
      { numRuns: runs(300) },
    );
  });

  it('measures arcs as arcs', () => {
    const disc: Path = {
      kind: 'path',
      closed: true,
      vertices: [
        { x: 10, y: 5, bulge: 1 },
        { x: 0, y: 5, bulge: 1 },
      ],
    };
    const coin = partOf('coin', disc, { quantity: 2 });
    const step = 12 / Math.SQRT2;
    expect(messages([at(5, 5, 'coin'), at(5 + step, 5 + step, 'coin')], 2, 5, [coin])).toEqual([]);
    expect(messages([at(5, 5, 'coin'), at(5 + step - 0.01, 5 + step, 'coin')], 2, 5, [coin])).toHaveLength(1);
    const lens = wedge(30, 5, 9, { quantity: 1 });
    expect(messages([at(5, 5, 'coin'), at(40, 40, 'coin'), at(16, 5, 'slice')], 2, 5, [coin, lens])).toHaveLength(1);
  });
});
