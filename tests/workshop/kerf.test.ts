import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyWedge, partOf, wedge } from './shapes.ts';
import { beamReach, cutPath } from '$lib/workshop/kerf.ts';
import { circle, openPath, polygonPath } from '$lib/geometry/contour.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { plainly } from '../plainly.ts';

const label = openPath([
  [10, 5],
  [20, 5],
]);

describe('cutPath', () => {
  it('grows the outside, shrinks holes and leaves engraving alone', () => {
    const part = wedge(100, 10, 30, { inside: [circle([80, 8], 3)], mark: [label] });
    const result = cutPath(part, 0.2);
    if (!result.ok) throw new Error('expected a path');
    expect(result.value.inside).toEqual([circle([80, 8], 2.9)]);
    expect(result.value.engrave).toEqual([label]);
    // Area of a convex outline at distance d with mitred corners: at least area + perimeter · d, at most 4 mitres more.
    const perimeter = 100 + 30 + 10 + Math.hypot(100, 20);
    const gain = signedArea(result.value.outside) - signedArea(part.outside) - perimeter * 0.1;
    expect(gain).toBeGreaterThan(0);
    expect(gain).toBeLessThan(4 * 4 * 0.1 ** 2);
  });

  it('follows the outline itself when there is no kerf', () => {
    const part = wedge(100, 10, 30, { inside: [circle([80, 8], 3)] });
    expect(cutPath(part, 0)).toEqual({ ok: true, value: { outside: part.outside, inside: part.inside, engrave: [] } });
  });

  it('names part, limit and kerf when the beam does not fit', () => {
    const part = wedge(100, 10, 30, { inside: [circle([80, 8], 0.075)] });
    expect(plainly(cutPath(part, 0.2))).toEqual({
      ok: false,
      faults: [
        {
          pointer: '/cutter/kerf',
          message:
            'expected a kerf of at most 0.149 mm for a hole in part "slice", got 0.2 mm: the beam or bit does not fit in',
        },
      ],
    });
    const notched = partOf(
      'comb',
      polygonPath([
        [0, 0],
        [20, 0],
        [20, 20],
        [10.5, 20],
        [10.5, 10],
        [9.5, 10],
        [9.5, 20],
        [0, 20],
      ]),
    );
    expect(plainly(cutPath(notched, 1.5))).toEqual({
      ok: false,
      faults: [
        {
          pointer: '/cutter/kerf',
          message:
            'expected a kerf of at most 0.999 mm for a notch in part "comb", got 1.5 mm: the beam or bit does not fit in',
        },
      ],
    });
  });

  it('more kerf takes more: areas grow outside and shrink inside', () => {
    fc.assert(
      fc.property(anyWedge, fc.integer({ min: 1, max: 30 }), (part, hundredths) => {
        const [less, more] = [cutPath(part, hundredths / 100), cutPath(part, hundredths / 50)];
        fc.pre(less.ok && more.ok);
        expect(signedArea(more.value.outside)).toBeGreaterThan(signedArea(less.value.outside));
        part.inside.forEach((_, i) => {
          const [wide, narrow] = [less.value.inside[i], more.value.inside[i]];
          if (wide?.kind !== 'circle' || narrow?.kind !== 'circle') throw new Error('expected circles');
          expect(narrow.radius).toBeCloseTo(wide.radius - hundredths / 200, 12);
        });
      }),
    );
  });
});

describe('beamReach', () => {
  it('is a kerf along straight edges and more at mitred corners', () => {
    const part = wedge(100, 20, 20);
    const cut = cutPath(part, 0.4);
    if (!cut.ok) throw new Error('expected a path');
    expect(beamReach(part, cut.value, 0.4)).toBeCloseTo(0.2 * (1 + Math.SQRT2), 12);
  });
});
