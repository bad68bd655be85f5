import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutterFor } from '$lib/workshop/beam.ts';
import { largeFace, taperFrom } from '$lib/workshop/taper.ts';
import { numberFrom } from '../numbers.ts';

describe('a leaning cut edge', () => {
  it('stands out at the face where the kerf is narrower', () => {
    fc.assert(
      fc.property(numberFrom(0.1, 0.6), numberFrom(0.1, 0.6), numberFrom(1, 20), (entry, exit, thickness) => {
        const taper = taperFrom(entry, exit, thickness);
        // Each side runs half the difference of the widths out over the thickness.
        expect(thickness * Math.tan(taper)).toBeCloseTo((entry - exit) / 2, 12);
        expect(largeFace(taper)).toBe(entry === exit ? null : entry > exit ? 'exit' : 'entry');
      }),
    );
    expect(largeFace(0)).toBeNull();
  });
});

it('a stock’s own kerf and taper come before the cutter’s', () => {
  const cutter = { kerf: 0.2, taper: 0.5, spacing: 2 };
  expect(cutterFor({ kerf: null, taper: null }, cutter)).toEqual(cutter);
  expect(cutterFor({ kerf: 0, taper: 1 }, cutter)).toEqual({ kerf: 0, taper: 1, spacing: 2 });
});
