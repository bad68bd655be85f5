import fc from 'fast-check';
import { expect, it } from 'vitest';
import { MOST_LAYERS, stackOf } from '$lib/stand/layers.ts';
import { mm, orZero } from './stands.ts';
import { plainly } from '../plainly.ts';

it('rounds the width over the thickness, and makes at least one layer', () => {
  expect(stackOf(165, 3.05, 0, 0)).toEqual({
    ok: true,
    value: {
      layers: 54,
      width: 54 * 3.05,
      widthAsked: 165,
      leftOver: 165 - 54 * 3.05,
      widths: [{ what: 'layer', each: 3.05, count: 54 }],
    },
  });
  expect(stackOf(10, 18, 0, 0)).toMatchObject({ ok: true, value: { layers: 1, width: 18, leftOver: -8 } });
  expect(stackOf(5, 18, 0, 0)).toMatchObject({ ok: true, value: { layers: 1, width: 18 } });
});

it('sums layers, glue and veneer to the finished width, as near to the one asked as whole layers come', () => {
  fc.assert(
    fc.property(mm(3, 3000), mm(0.5, 100), orZero(mm(0, 2)), orZero(mm(0, 10)), (asked, thickness, glue, veneer) => {
      const outcome = stackOf(asked, thickness, glue, veneer);
      fc.pre(outcome.ok);
      const { layers, width, leftOver, widthAsked } = outcome.value;
      expect(Number.isInteger(layers) && layers >= 1).toBe(true);
      let sum = veneer;
      for (let layer = 1; layer <= layers; layer++) sum += thickness + (layer < layers ? glue : veneer);
      // Rounding of 2000 additions of metres.
      expect(Math.abs(width - sum)).toBeLessThan(1e-8);
      expect(widthAsked).toBe(asked);
      expect(width + leftOver).toBeCloseTo(asked, 9);
      if (layers > 1) expect(Math.abs(leftOver)).toBeLessThanOrEqual((thickness + glue) / 2 + 1e-9);
      if (glue === 0 && veneer === 0) expect(layers).toBe(Math.max(1, Math.round(asked / thickness)));
    }),
  );
});

it('has no answer for a veneer that fills the width', () => {
  expect(plainly(stackOf(20, 3, 0, 10))).toEqual({
    ok: false,
    kind: 'no-answer',
    faults: [
      { pointer: '/stand/veneer', message: 'expected a veneer under half the stand’s width of 20 mm, got 10 mm' },
    ],
  });
});

it('has no answer for more layers than anybody glues', () => {
  expect(stackOf(MOST_LAYERS, 1, 0, 0)).toMatchObject({ ok: true, value: { layers: MOST_LAYERS } });
  expect(plainly(stackOf(3000, 0.2, 0, 0))).toEqual({
    ok: false,
    kind: 'no-answer',
    faults: [
      {
        pointer: '/stand/width',
        message:
          'expected at most 2000 layers, got 15000: 3000 mm of width from layers of 0.2 mm; use thicker stock or a narrower stand',
      },
    ],
  });
});
