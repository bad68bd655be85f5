import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import type { Contour } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { fitCoupon, type CouponReading } from '$lib/workshop/coupon/coupon.ts';
import { couponParts, couponReadings } from '$lib/workshop/coupon/couponParts.ts';
import { cutPath } from '$lib/workshop/kerf.ts';
import { canLetter, LETTERING_ABOVE, LETTERING_BELOW, letteringWidth } from '$lib/workshop/lettering/lettering.ts';
import { leastSquares } from '$lib/workshop/coupon/leastSquares.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';
import { numberFrom } from '../../numbers.ts';
import { plainText } from '$lib/project/sentence.ts';

interface Beam {
  readonly entry: number;
  readonly exit: number;
  readonly scale: number;
}

/** What a perfect caliper reads of a coupon that this beam has cut, its files allowing for `used`. */
const cutBy = ({ entry, exit, scale }: Beam, used: number, noise: () => number = () => 0): CouponReading[] =>
  couponReadings('mm').map(({ kind, drawn }) => {
    const sign = kind === 'tab' ? 1 : -1;
    const read = (kerf: number): number => drawn * (1 + scale) + sign * (used - kerf) + noise();
    return { kind, drawn, entry: read(entry), exit: read(exit) };
  });

const resultOf = (readings: readonly CouponReading[], used = 0.2, thickness = 3) => {
  const { result } = fitCoupon(readings, { thickness, kerfUsed: used });
  if (!result) throw new Error('expected a result');
  return result;
};

/** Park and Miller's minimal generator: the same readings every time. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

describe('a coupon', () => {
  it('gives back the beam that cut it', () => {
    fc.assert(
      fc.property(
        numberFrom(0.05, 0.6),
        numberFrom(0.05, 0.6),
        numberFrom(-0.003, 0.003),
        numberFrom(0, 0.5),
        numberFrom(1, 20),
        (entry, exit, scale, used, thickness) => {
          const result = resultOf(cutBy({ entry, exit, scale }, used), used, thickness);
          expect(result.entry?.value).toBeCloseTo(entry, 9);
          expect(result.exit?.value).toBeCloseTo(exit, 9);
          expect(result.kerf.value).toBeCloseTo((entry + exit) / 2, 9);
          expect(result.taper?.value).toBeCloseTo(Math.atan((entry - exit) / (2 * thickness)), 9);
          expect(result.scale?.value).toBeCloseTo(scale, 9);
          expect(result.largeFace).toBe(entry > exit ? 'exit' : 'entry');
          expect(result.remarks).toEqual([]);
        },
      ),
    );
  });

  it('of 0.30 and 0.20 mm in 3 mm leans by 0.9548°', () => {
    const result = resultOf(cutBy({ entry: 0.3, exit: 0.2, scale: 0 }, 0.2));
    expect(degrees(result.taper?.value ?? NaN)).toBeCloseTo(0.9548, 4);
    expect(result.kerf.value).toBeCloseTo(0.25, 12);
  });

  it('is as unsure as its readings scatter: the truth lies within the stated uncertainty about as often as it should', () => {
    const next = seeded(7);
    /** Twelve rolls less six: nearly normal, of deviation 1. */
    const normal = (): number => Array.from({ length: 12 }, next).reduce((a, b) => a + b, 0) - 6;
    let [within, kerfs, tapers] = [0, 0, 0];
    const runs = 400;
    for (let run = 0; run < runs; run++) {
      const result = resultOf(cutBy({ entry: 0.3, exit: 0.2, scale: 0.001 }, 0.2, () => 0.03 * normal()));
      const off = (measured: { value: number; uncertainty: number | null } | null, truth: number): number =>
        Math.abs((measured?.value ?? NaN) - truth) / (measured?.uncertainty ?? NaN);
      if (off(result.kerf, 0.25) < 2) kerfs++;
      if (off(result.taper, Math.atan(0.1 / 6)) < 2) tapers++;
      if (off(result.scale, 0.001) < 2) within++;
    }
    // Two deviations hold 93.5 % of Student's t with 13 degrees of freedom; ± 4 deviations of 400 draws.
    for (const count of [within, kerfs, tapers]) {
      expect(count / runs).toBeGreaterThan(0.885);
      expect(count / runs).toBeLessThan(0.985);
    }
  });

  it('is never surer than the caliper', () => {
    const result = resultOf(cutBy({ entry: 0.25, exit: 0.25, scale: 0 }, 0.2));
    // Eight tabs and slots at one face, the scale fitted as well: at least the resolution over √12 over √8.
    expect(result.entry?.uncertainty).toBeGreaterThan(0.01 / Math.sqrt(12) / Math.sqrt(8) - 1e-12);
  });

  it('does without a face, without slots, and says less', () => {
    const all = cutBy({ entry: 0.3, exit: 0.2, scale: 0 }, 0.2);
    const top = resultOf(all.map((one) => ({ ...one, exit: null })));
    expect(top).toMatchObject({ exit: null, taper: null, largeFace: null, used: 8 });
    expect(top.kerf.value).toBeCloseTo(0.3, 9);
    const one = resultOf([{ kind: 'tab', drawn: 20, entry: 19.9, exit: 20 }]);
    expect(one.kerf.value).toBeCloseTo(0.25, 9);
    expect(one).toMatchObject({ scale: null, kerf: { uncertainty: null }, taper: { uncertainty: null } });
    expect(one.taper?.value).toBeCloseTo(Math.atan(0.1 / 6), 9);
  });

  it('leaves out what cannot be a width, and doubts what does not agree', () => {
    const all = cutBy({ entry: 0.3, exit: 0.2, scale: 0 }, 0.2);
    const spoilt = all.map((one, i) =>
      i === 0 ? { ...one, entry: 49, exit: -1 } : i === 1 ? { ...one, entry: NaN } : one,
    );
    const result = resultOf(spoilt);
    expect(result.used).toBe(13);
    expect(result.kerf.value).toBeCloseTo(0.25, 9);
    expect(result.remarks.map(plainText)).toEqual([
      'tab of 5 mm, entry face: expected a width within 3 mm of the drawn one, got 49 mm: left out.',
      'tab of 5 mm, exit face: expected a width within 3 mm of the drawn one, got -1 mm: left out.',
      'tab of 10 mm, entry face: expected a width within 3 mm of the drawn one, got NaN mm: left out.',
    ]);
    const wrong = resultOf(all.map((one, i) => (i === 5 ? { ...one, exit: (one.exit ?? 0) + 0.5 } : one)));
    expect(wrong.remarks.map(plainText).join()).toMatch(
      /slot of 10 mm, exit face: 0\.\d+ mm away from the others: measure it again\./,
    );
  });

  it('says nothing of nothing', () => {
    expect(fitCoupon(couponReadings('mm'), { thickness: 3, kerfUsed: 0.2 })).toEqual({
      result: null,
      remarks: ['Nothing usable was measured.'],
    });
    expect(fitCoupon([], { thickness: 3, kerfUsed: 0.2 }).result).toBeNull();
  });
});

describe('what is cut of it', () => {
  const parts = couponParts({ name: 'board', thickness: 3.05 }, 'mm');

  it('are the slots and tabs that are to be measured, and a comb for the stock’s own edge', () => {
    expect(parts.map(({ name }) => name)).toEqual([
      'coupon-slots',
      'coupon-tab-5',
      'coupon-tab-10',
      'coupon-tab-20',
      'coupon-tab-40',
      'coupon-fits',
    ]);
    const widthOf = (contour: Contour): number => extentOf(contour).right - extentOf(contour).left;
    const widths = couponReadings('mm')
      .filter(({ kind }) => kind === 'slot')
      .map(({ drawn }) => drawn);
    expect(parts[0]?.inside.map(widthOf)).toEqual(widths);
    expect(parts.slice(1, 5).map(({ outside }) => widthOf(outside))).toEqual(widths);
  });

  it('has room for any kerf a beam has, and letters that stay on it', () => {
    for (const part of parts) {
      expect(cutPath(part, 1).ok).toBe(true);
      const { left, right, bottom, top } = extentOf(part.outside);
      expect([left, bottom]).toEqual([0, 0]);
      expect(labelsOf(part).length).toBeGreaterThan(0);
      for (const { text, height, x, y } of labelsOf(part)) {
        expect(canLetter(text)).toBe(true);
        const half = letteringWidth(text, height) / 2;
        expect(x - half).toBeGreaterThan(0);
        expect(x + half).toBeLessThan(right);
        expect(y - LETTERING_BELOW * height).toBeGreaterThan(0);
        expect(y + LETTERING_ABOVE * height).toBeLessThan(top);
        for (const hole of part.inside) {
          expect(y + LETTERING_ABOVE * height < extentOf(hole).bottom || extentOf(hole).right < x - half).toBe(true);
        }
      }
    }
  });

  it('is round in inches where inches are measured: 25.4 mm to each', () => {
    const inches = couponParts({ name: 'board', thickness: 3.175 }, 'in');
    const widthOf = (contour: Contour): number => extentOf(contour).right - extentOf(contour).left;
    expect(inches[0]?.inside.map((slot) => Number((widthOf(slot) / 25.4).toFixed(9)))).toEqual([0.2, 0.4, 0.8, 1.6]);
    expect(couponReadings('in').map(({ drawn }) => Number((drawn / 25.4).toFixed(9)))).toEqual([
      0.2, 0.4, 0.8, 1.6, 0.2, 0.4, 0.8, 1.6,
    ]);
    expect(inches.flatMap((part) => labelsOf(part).map(({ text }) => text))).toEqual([
      ...['0.2', '0.4', '0.8', '1.6'],
      ...['0.2', '0.4', '0.8', '1.6'],
      ...['-0.004', '0.000', '0.004', '0.008', '0.012'],
    ]);
  });

  it('the comb’s slots grow by a tenth each', () => {
    const vertices = parts.at(-1)?.outside.vertices ?? [];
    const floors = vertices.filter(({ y }) => Math.abs(y - 13) < 1e-9).map(({ x }) => x);
    const widths = floors.flatMap((x, i) => (i % 2 === 0 ? [x - (floors[i + 1] ?? NaN)] : [])).reverse();
    expect(widths.map((width) => Number((width - 3.05).toFixed(9)))).toEqual([-0.1, 0, 0.1, 0.2, 0.3]);
  });
});

describe('least squares', () => {
  it('goes through a line’s points, and leaves residuals square to every column', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(numberFrom(-5, 5), numberFrom(-5, 5)), { minLength: 4, maxLength: 12 }),
        (points) => {
          const rows = points.map(([x]) => [1, x]);
          const fit = leastSquares(
            rows,
            points.map(([, y]) => y),
          );
          fc.pre(fit !== null && Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x)) > 0.1);
          const [a = NaN, b = NaN] = fit?.values ?? [];
          const residuals = points.map(([x, y]) => y - a - b * x);
          expect(residuals.reduce((sum, r) => sum + r, 0)).toBeCloseTo(0, 6);
          expect(residuals.reduce((sum, r, i) => sum + r * (points[i]?.[0] ?? NaN), 0)).toBeCloseTo(0, 6);
          expect(fit?.rss).toBeCloseTo(
            residuals.reduce((sum, r) => sum + r * r, 0),
            6,
          );
        },
      ),
    );
  });

  it('has no answer where the unknowns cannot be told apart', () => {
    expect(
      leastSquares(
        [
          [1, 2],
          [2, 4],
          [3, 6],
        ],
        [1, 2, 3],
      ),
    ).toBeNull();
    expect(leastSquares([[0]], [1])).toBeNull();
  });
});
