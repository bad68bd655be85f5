import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { anyWedge, asCutter, lippedCorners, partOf, wedge } from '../shapes.ts';
import { arrange, HAIR, MOST_SHEETS } from '$lib/workshop/nesting/arrange.ts';
import { circle, polygonPath, type Path } from '$lib/geometry/contour.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';
import type { Stock } from '$lib/project/project.ts';
import { runs } from '../../runs.ts';
import { plainText } from '$lib/project/sentence.ts';

const board = (width: number, height: number, name = 'board'): Stock => ({
  name,
  thickness: 3,
  sheet: { width, height },
  density: 750,
  ...asCutter,
});
const cutter = { kerf: 0.2, taper: 0, spacing: 2, margin: 5 };
const laid = (result: ReturnType<typeof arrange>): Sheet[] => {
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('\n'));
  return result.value;
};
const faultsOf = (result: ReturnType<typeof arrange>) =>
  result.ok ? [] : result.faults.map((fault) => ({ ...fault, message: plainText(fault.message) }));
const most = (part: Part, width: number, height: number, quarterTurns: boolean): number => {
  const sheets = laid(arrange([{ ...part, quantity: 400 }], [board(width, height)], cutter, { quarterTurns }));
  return sheets[0]?.placements.length ?? 0;
};

const trapezoid = wedge(220, 12, 50);
const triangle = partOf(
  'corner',
  polygonPath([
    [0, 0],
    [150, 0],
    [0, 90],
  ]),
);

/** What simple arrangements were measured to reach on these boards with spacing 2 and margin 5. */
describe('copies on one sheet', () => {
  it.each([
    ['right trapezoid 220 × 12→50', trapezoid, 600, 300, false, 20],
    ['the same with quarter turns', trapezoid, 600, 300, true, 22],
    ['the same on a larger board', trapezoid, 1200, 600, false, 92],
    ['the same with quarter turns', trapezoid, 1200, 600, true, 92],
    ['right triangle 150 × 90', triangle, 600, 300, false, 18],
    ['the same with quarter turns', triangle, 600, 300, true, 20],
    ['a wedge with a lip', partOf('lip', polygonPath(lippedCorners(220, 12, 50, 20, 10))), 600, 300, false, 15],
  ])('%s', (_, part, width, height, quarterTurns, least) => {
    expect(most(part, width, height, quarterTurns)).toBeGreaterThanOrEqual(least);
  });

  it('never turns a part by a quarter when the grain forbids it', () => {
    const sheets = laid(arrange([{ ...trapezoid, quantity: 60 }], [board(600, 300)], cutter, { quarterTurns: false }));
    const turns = new Set(sheets.flatMap(({ placements }) => placements.map(({ turn }) => turn)));
    expect([...turns].sort()).toEqual([0, Math.PI]);
  });

  it('loses no copy to dust where parts fill the sheet exactly', () => {
    const tile = wedge((600 - 10 - 2 * (2 + HAIR)) / 3, (300 - 10 - (2 + HAIR)) / 2, (300 - 10 - (2 + HAIR)) / 2);
    expect(most(tile, 600, 300, false)).toBe(6);
  });
});

describe('several parts and sheets', () => {
  it('fills sheets, numbers them within their stock and reports their fill', () => {
    const thin = { ...trapezoid, name: 'thin', stock: 'thin', quantity: 3 };
    const parts = [{ ...trapezoid, quantity: 50, inside: [circle([200, 20], 3)] }, thin];
    const sheets = laid(arrange(parts, [board(600, 300), board(600, 300, 'thin')], cutter));
    expect(sheets.map(({ stock, number, placements }) => [stock, number, placements.length])).toEqual([
      ['board', 1, 22],
      ['board', 2, 22],
      ['board', 3, 6],
      ['thin', 1, 3],
    ]);
    const area = signedArea(trapezoid.outside);
    expect(sheets[0]?.fill).toBeCloseTo((22 * (area - 9 * Math.PI)) / (600 * 300), 12);
    expect(sheets[3]?.fill).toBeCloseTo((3 * area) / (600 * 300), 12);
  });

  it('puts what is left of one part on a sheet with the others', () => {
    const parts = [
      { ...trapezoid, name: 'left', quantity: 9 },
      { ...wedge(220, 12, 40), name: 'right', quantity: 9 },
      { ...wedge(60, 10, 10), name: 'coupon', quantity: 2 },
    ];
    expect(laid(arrange(parts, [board(600, 300)], cutter))).toHaveLength(1);
  });

  it('puts them into the room that a strip has left where the strip lies, not twice as far off', () => {
    const slice = (name: string, quantity: number, run: number, thin: number, thick: number): Part => ({
      ...wedge(run, thin, thick, { quantity }),
      name,
    });
    const parts = [
      slice('first', 50, 227.0102121727541, 20.764323838986456, 67.46203785762191),
      slice('second', 57, 207.0447067823261, 10.737989647779614, 42.120107281953096),
      slice('third', 42, 141.32926249876618, 20.002899024169892, 32.46499706059694),
    ];
    const sheets = laid(arrange(parts, [board(1217.412, 403.356)], { kerf: 0, taper: 0, spacing: 1, margin: 0 }));
    expect(sheets.reduce((sum, { placements }) => sum + placements.length, 0)).toBe(50 + 57 + 42);
  });

  it('never takes more sheets together than apart, and always gives the same answer', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyWedge, fc.integer({ min: 0, max: 30 })), { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 300, max: 900 }),
        (several, width) => {
          const parts = several.map(([part, quantity], i) => ({ ...part, name: `part ${i}`, quantity }));
          const stocks = [board(width, 300)];
          const together = laid(arrange(parts, stocks, cutter));
          const apart = parts.map((part) => laid(arrange([part], stocks, cutter)).length);
          expect(together.length).toBeLessThanOrEqual(apart.reduce((sum, count) => sum + count, 0));
          expect(layoutFaults(together, parts, cutter.spacing + HAIR, cutter.margin)).toEqual([]);
          expect(laid(arrange(parts, stocks, cutter))).toEqual(together);
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('surrounds arcs: round-ended parts keep their distance', () => {
    const half = Math.tan(Math.PI / 4);
    const slot: Path = {
      kind: 'path',
      closed: true,
      vertices: [
        { x: 15, y: 0, bulge: 0 },
        { x: 65, y: 0, bulge: half },
        { x: 65, y: 30, bulge: 0 },
        { x: 15, y: 30, bulge: half },
      ],
    };
    const bitten: Path = {
      kind: 'path',
      closed: true,
      vertices: [
        { x: 0, y: 0, bulge: 0 },
        { x: 60, y: 0, bulge: -0.6 },
        { x: 60, y: 50, bulge: 0 },
        { x: 0, y: 20, bulge: 0 },
      ],
    };
    const parts = [partOf('tongue', slot, { quantity: 40 }), partOf('bite', bitten, { quantity: 40 })];
    const sheets = laid(arrange(parts, [board(600, 300)], cutter));
    expect(layoutFaults(sheets, parts, cutter.spacing, cutter.margin)).toEqual([]);
    expect(sheets.length).toBeLessThanOrEqual(2);
  });

  it('stands parts further apart where the beam overshoots a sharp corner', () => {
    const parts = [{ ...triangle, quantity: 8 }];
    const wide = { kerf: 4, taper: 0, spacing: 4, margin: 5 };
    const sheets = laid(arrange(parts, [board(600, 300)], wide));
    // The sharpest corner, atan(90/150), has a mitre of 1 / sin(half of it) half kerfs; the beam adds another one.
    const reach = 2 * (1 + 1 / Math.sin(Math.atan2(90, 150) / 2));
    expect(layoutFaults(sheets, parts, reach, wide.margin)).toEqual([]);
  });

  it('lays nothing for no parts', () => {
    expect(laid(arrange([], [board(600, 300)], cutter))).toEqual([]);
    expect(laid(arrange([{ ...trapezoid, quantity: 0 }], [board(600, 300)], cutter))).toEqual([]);
  });
});

describe('refused', () => {
  it('a part larger than the sheet, by how much', () => {
    const part = wedge(215, 20, 61.3);
    expect(faultsOf(arrange([part], [board(600, 300, 'other'), board(200, 100)], cutter))).toEqual([
      {
        pointer: '/stock/1/sheet',
        message:
          'expected a sheet of at least 215.0 × 61.3 mm plus margins for part "slice", got 200 × 100 mm: 25.0 mm too narrow',
      },
    ]);
    expect(faultsOf(arrange([wedge(215, 20, 101)], [board(200, 100)], cutter))[0]?.message).toContain(
      'got 200 × 100 mm: 25.0 mm too narrow and 11.0 mm too low',
    );
    expect(faultsOf(arrange([wedge(90.003, 20, 20)], [board(100, 50)], cutter))[0]?.message).toContain(
      'got 100 × 50 mm: 0.003 mm too narrow',
    );
  });

  it('not a part that fits after a quarter turn, unless the grain forbids it', () => {
    const part = wedge(280, 20, 40);
    expect(laid(arrange([part], [board(100, 300)], cutter))).toHaveLength(1);
    expect(faultsOf(arrange([part], [board(100, 300)], cutter, { quarterTurns: false }))).toHaveLength(1);
  });

  it('a spacing under the kerf, a margin under half of it, and a stock that is not there', () => {
    const faults = faultsOf(
      arrange([wedge(50, 5, 9, { stock: 'oak' })], [board(600, 300)], { kerf: 3, taper: 0, spacing: 2, margin: 1 }),
    );
    expect(faults).toEqual([
      { pointer: '/cutter/spacing', message: 'expected a spacing of at least the kerf of 3 mm, got 2 mm' },
      {
        pointer: '/cutter/margin',
        message: 'expected a margin of at least 1.5 mm, half the kerf of 3 mm, got 1 mm',
      },
      { pointer: '/stock', message: 'expected a stock named "oak" for part "slice", got none' },
    ]);
  });

  it('a kerf that closes a hole', () => {
    const part = wedge(50, 5, 9, { inside: [circle([40, 3], 0.08)] });
    expect(faultsOf(arrange([part], [board(600, 300)], cutter))[0]?.pointer).toBe('/cutter/kerf');
  });

  it('a hole that a board’s own kerf closes, at that board, and says what counts without it', () => {
    const part = wedge(50, 5, 9, { inside: [circle([40, 3], 0.3)] });
    const [fault] = faultsOf(arrange([part], [{ ...board(600, 300), kerf: 0.8 }], { ...cutter, kerf: 0.2 }));
    expect(fault).toEqual({
      pointer: '/stock/0/kerf',
      message: expect.stringMatching(
        /^expected a kerf of at most 0\.(6|599) mm for a hole in part "slice", got 0\.8 mm: the beam or bit does not fit in\. ".+" has this kerf of its own; without it the cutter’s of 0\.2 mm counts$/,
      ),
    });
  });

  it('more copies or sheets than anybody cuts', () => {
    expect(faultsOf(arrange([{ ...trapezoid, quantity: 20_001 }], [board(5000, 5000)], cutter))).toEqual([
      {
        pointer: '/stock',
        message: 'expected at most 20000 parts to cut, got 20001: thicker stock or a narrower stand needs fewer',
      },
    ]);
    const sheets = (quantity: number) => faultsOf(arrange([{ ...trapezoid, quantity }], [board(240, 70)], cutter));
    expect(sheets(20_000)).toEqual([
      {
        pointer: '/stock/0/sheet',
        message: `expected at most ${MOST_SHEETS} sheets of "board", got parts for more: take larger sheets or thicker stock`,
      },
    ]);
    expect(sheets(MOST_SHEETS + 1)).toHaveLength(1);
    expect(laid(arrange([{ ...wedge(220, 30, 55), quantity: 500 }], [board(240, 70)], cutter))).toHaveLength(500);
  });
});
