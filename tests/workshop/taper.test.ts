import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { cutterFor } from '$lib/workshop/beam.ts';
import { inlayGrowth, type InlayStock } from '$lib/workshop/inlay.ts';
import { edgeOffset, jointGap, largeFace, stackTaper, taperFrom } from '$lib/workshop/taper.ts';
import { numberFrom } from '../numbers.ts';

const tapers = numberFrom(radians(-3), radians(3));

describe('a leaning cut edge', () => {
  it('stands as far out at one face as it stands back at the other', () => {
    fc.assert(
      fc.property(numberFrom(0.1, 0.6), numberFrom(0.1, 0.6), numberFrom(1, 20), (entry, exit, thickness) => {
        const taper = taperFrom(entry, exit, thickness);
        // Half the kerf's width on each side of the beam, less its mean.
        const offset = Math.abs(entry - (entry + exit) / 2) / 2;
        expect(edgeOffset(taper, thickness)).toBeCloseTo(offset, 12);
        expect(largeFace(taper)).toBe(entry === exit ? null : entry > exit ? 'exit' : 'entry');
      }),
    );
    expect(largeFace(0)).toBeNull();
  });

  it('makes ridges in a stack, and no steps once every second slice is turned over', () => {
    fc.assert(
      fc.property(
        tapers,
        numberFrom(1, 20),
        fc.integer({ min: 2, max: 9 }),
        fc.boolean(),
        (taper, thickness, count, turned) => {
          // Walk along the stack's face: where the edge is at both faces of every slice.
          const out = Math.tan(taper) * (thickness / 2);
          const faces = Array.from({ length: count }, (_, i) => (turned && i % 2 === 1 ? [out, -out] : [-out, out]));
          const steps = faces.slice(1).map(([start = NaN], i) => Math.abs(start - (faces[i]?.[1] ?? NaN)));
          const { step, ridge, allowance, grow } = stackTaper(taper, thickness, turned);
          for (const one of steps) expect(one).toBeCloseTo(step, 12);
          const all = faces.flat();
          expect(Math.max(...all) - Math.min(...all)).toBeCloseTo(ridge, 12);
          expect(allowance).toBe(ridge);
          // Grown by half a ridge, the deepest valley lies at the finished outline.
          expect(Math.min(...all) + grow).toBeCloseTo(0, 12);
          // Edge to edge in one plane: a wedge-shaped gap, or none.
          expect(jointGap(taper, thickness, turned)).toBeCloseTo(turned ? 0 : 4 * Math.abs(out), 12);
        },
      ),
    );
  });
});

describe('an inlaid panel', () => {
  const stocks: fc.Arbitrary<InlayStock> = fc.record({
    kerf: numberFrom(0.05, 0.5),
    taper: tapers,
    thickness: numberFrom(1, 10),
  });

  it('grown as it says, comes as near to its hole as the gap, and no nearer, at every depth', () => {
    fc.assert(
      fc.property(stocks, stocks, fc.boolean(), numberFrom(0, 0.3), (hole, panel, turned, gap) => {
        const { finished, onTheLine } = inlayGrowth(hole, panel, turned, gap);
        const deepest = Math.min(hole.thickness, panel.thickness);
        const gaps = Array.from({ length: 51 }, (_, i) => {
          const depth = (i / 50) * deepest;
          // Widening at the entry for a hole, narrowing for a panel; a panel turned over shows its exit first.
          const holeEdge = Math.tan(hole.taper) * (hole.thickness / 2 - depth);
          const fromEntry = turned ? panel.thickness - depth : depth;
          const panelEdge = -Math.tan(panel.taper) * (panel.thickness / 2 - fromEntry);
          return holeEdge - panelEdge - finished;
        });
        expect(Math.min(...gaps)).toBeCloseTo(gap, 9);
        expect(onTheLine - finished).toBeCloseTo((hole.kerf + panel.kerf) / 2, 12);
      }),
    );
  });

  it('of the same stock fits all through once it is turned over', () => {
    const stock = { kerf: 0.2, taper: radians(1), thickness: 3 };
    expect(inlayGrowth(stock, stock, true, 0)).toEqual({ finished: 0, onTheLine: 0.2 });
    expect(inlayGrowth(stock, stock, false, 0).finished).toBeCloseTo(-3 * Math.tan(radians(1)), 12);
  });
});

it('a stock’s own kerf and taper come before the cutter’s', () => {
  const cutter = { kerf: 0.2, taper: 0.5, spacing: 2 };
  expect(cutterFor({ kerf: null, taper: null }, cutter)).toEqual(cutter);
  expect(cutterFor({ kerf: 0, taper: 1 }, cutter)).toEqual({ kerf: 0, taper: 1, spacing: 2 });
});
