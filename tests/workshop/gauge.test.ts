import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { baffleGauge, edgeGauge } from '$lib/workshop/gauge.ts';
import { cutPath } from '$lib/workshop/kerf.ts';
import { canLetter } from '$lib/workshop/lettering/lettering.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';
import { numberFrom } from '../numbers.ts';

const board = { name: 'board', thickness: 3 };

/** Stands on the desk, cuttable, with its angle on it where there is room for lettering. */
const isSound = (part: Part, angle: number): void => {
  const [a, b] = part.outside.vertices;
  expect([a?.x, a?.y, b?.y]).toEqual([0, 0, 0]);
  expect(signedArea(part.outside)).toBeGreaterThan(0);
  expect(cutPath(part, 0.5).ok).toBe(true);
  for (const { text } of labelsOf(part)) {
    expect(text).toContain(`${degrees(angle).toFixed(2)}°`);
    expect(canLetter(text)).toBe(true);
  }
};

describe('a gauge for an edge', () => {
  it('is as high as the edge at its end, and falls or rises with it over 120 mm or all of it', () => {
    fc.assert(
      fc.property(numberFrom(20, 400), numberFrom(10, 300), numberFrom(10, 300), (length, start, end) => {
        const part = edgeGauge('edge', 'front', { length, start, end }, board);
        const [, b, c, d] = part?.outside.vertices ?? [];
        if (!part || !b || !c || !d) throw new Error('there is a gauge with four corners');
        expect(b.x).toBeCloseTo(Math.min(120, length), 9);
        expect(d.y).toBe(start);
        expect((c.y - d.y) / b.x).toBeCloseTo((end - start) / length, 9);
        isSound(part, Math.atan2(start - end, length));
        expect(labelsOf(part)).toHaveLength(1);
      }),
    );
  });

  it('is not drawn where none stands', () => {
    for (const edge of [
      { length: 19, start: 20, end: 20 },
      { length: 200, start: 451, end: 20 },
      { length: 200, start: 20, end: NaN },
    ]) {
      expect(edgeGauge('edge', 'front', edge, board)).toBeNull();
    }
  });
});

describe('a gauge for a baffle', () => {
  const face = { elevation: 0.2, foot: 40, height: 250, before: 0, wood: 0, room: 300 };

  it('has the lean of the baffle on the edge of its head, back at the top for a positive elevation', () => {
    fc.assert(
      fc.property(
        fc.record({
          elevation: fc.oneof(fc.constant(0), numberFrom(radians(-60), radians(60))),
          foot: numberFrom(3, 250),
          height: numberFrom(60, 400),
          before: fc.oneof(fc.constant(0), numberFrom(0, 80)),
          wood: numberFrom(0, 280),
        }),
        (some) => {
          const part = baffleGauge('baffle', { ...some, room: 1e4 }, board);
          const [, inner, , tip, top, outer] = part?.outside.vertices ?? [];
          if (!part || !inner || !tip || !top || !outer) {
            // Wood up to the baffle's own upper edge, or nearly: nothing of it is free.
            expect(Math.max(some.foot, some.wood) + 23).toBeGreaterThan(some.foot + some.height);
            return;
          }
          expect(Math.atan2(top.x - tip.x, top.y - tip.y)).toBeCloseTo(some.elevation, 9);
          expect(top.y - tip.y).toBeGreaterThanOrEqual(20 - 1e-9);
          expect(tip.y).toBeGreaterThan(some.foot);
          expect(top.y).toBeLessThanOrEqual(some.foot + some.height + 1e-9);
          expect(top.x - outer.x).toBeGreaterThan(20 - 1e-9);
          expect(inner.x).toBeGreaterThan(40 - 1e-9);
          isSound(part, some.elevation);
        },
      ),
    );
  });

  it('is not drawn for what none can show', () => {
    expect(baffleGauge('baffle', face, board)).not.toBeNull();
    for (const change of [
      { elevation: radians(66) },
      { elevation: NaN },
      { foot: 440 },
      { before: 60, wood: 280 },
      { room: 42 },
    ]) {
      expect(baffleGauge('baffle', { ...face, ...change }, board)).toBeNull();
    }
  });
});
