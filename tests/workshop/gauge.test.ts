import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { baffleGauge, wedgeGauge } from '$lib/workshop/gauge.ts';
import { cutPath } from '$lib/workshop/kerf.ts';
import { canLetter } from '$lib/workshop/lettering.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/pieceLabel.ts';
import { numberFrom } from '../numbers.ts';

const stock = { name: 'board', thickness: 3 };
const angles = fc.oneof(fc.constant(0), numberFrom(radians(-65), radians(65)));
const cornersOf = (part: Part | null) => {
  if (!part) throw new Error('there is a gauge');
  const points = part.outside.vertices;
  const [a, b, c, d] = points;
  if (!a || !b || !c || !d || points.length !== 4) throw new Error('a gauge has four corners');
  return [a, b, c, d] as const;
};
/** Stands on the desk, cuttable, with its angle on it. */
const isSound = (part: Part | null, angle: number): void => {
  const [a, b] = cornersOf(part);
  if (!part) return;
  expect(a.y).toBe(0);
  expect(b.y).toBe(0);
  expect(b.x - a.x).toBeGreaterThan(19.9);
  expect(signedArea(part.outside)).toBeGreaterThan(0);
  expect(cutPath(part, 0.5).ok).toBe(true);
  expect(Math.min(...part.outside.vertices.map(({ x }) => x))).toBeCloseTo(0, 9);
  expect(labelsOf(part)[0]?.text).toContain(`${degrees(angle).toFixed(2)}°`);
  expect(canLetter(labelsOf(part)[0]?.text ?? '')).toBe(true);
};

describe('a gauge', () => {
  it('has the slope of the wedge on its top, front high for a positive tilt', () => {
    fc.assert(
      fc.property(angles, (tilt) => {
        const part = wedgeGauge('tilt', tilt, stock);
        const [, , rear, front] = cornersOf(part);
        expect(Math.atan2(front.y - rear.y, rear.x - front.x)).toBeCloseTo(tilt, 9);
        expect(Math.min(front.y, rear.y)).toBeCloseTo(12, 9);
        isSound(part, tilt);
      }),
    );
  });

  it('has the lean of the baffle on its right edge, back at the top for a positive elevation', () => {
    fc.assert(
      fc.property(angles, (elevation) => {
        const part = baffleGauge('baffle', elevation, stock);
        const [, foot, top] = cornersOf(part);
        expect(Math.atan2(top.x - foot.x, top.y - foot.y)).toBeCloseTo(elevation, 9);
        isSound(part, elevation);
      }),
    );
  });

  it('is not drawn for what none can show', () => {
    for (const angle of [radians(66), radians(-80), NaN]) {
      expect(wedgeGauge('tilt', angle, stock)).toBeNull();
      expect(baffleGauge('baffle', angle, stock)).toBeNull();
    }
  });
});
