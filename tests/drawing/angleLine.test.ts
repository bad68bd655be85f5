import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { angleLine } from '$lib/drawing/angleLine.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { angular } from '$lib/drawing/makeDimension.ts';
import { toPaper } from '$lib/drawing/place.ts';
import type { AngleDimension } from '$lib/drawing/view.ts';

const style = dimensionStyle(1);
const place = { scale: 0.1, origin: [100, 100] as const };
const dimension = (from: number, sweep: number, rest: Partial<AngleDimension> = {}): AngleDimension => ({
  kind: 'angle',
  id: 'a',
  subject: 'axis',
  corner: [50, 20],
  from,
  to: from + sweep,
  radius: 400,
  value: 30,
  name: 'toe',
  ...rest,
});
const centre = toPaper(place, [50, 20]);
const polar = ([x, y]: readonly [number, number]): { radius: number; angle: number } => ({
  radius: Math.hypot(x - centre[0], y - centre[1]),
  angle: Math.atan2(centre[1] - y, x - centre[0]),
});
const turnBetween = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

const directions = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const sweeps = fc.double({ min: 0.001, max: Math.PI, noNaN: true });

describe('angleLine', () => {
  it('puts the arrows’ tips on the arc and on the legs, and the text level', () => {
    fc.assert(
      fc.property(directions, sweeps, (from, sweep) => {
        const drawn = angleLine(dimension(from, sweep), place, style, '30°');
        drawn.arrows.forEach(([tip], index) => {
          expect(polar(tip).radius).toBeCloseTo(40, 6);
          expect(turnBetween(polar(tip).angle, index === 0 ? from : from + sweep)).toBeLessThan(1e-9);
        });
        for (const corner of drawn.lines.flat()) expect(polar(corner).radius).toBeCloseTo(40, 6);
        expect(drawn.text.turn).toBe(0);
      }),
    );
  });

  it('flips the arrows outside the legs when the arc is short', () => {
    const outside = (sweep: number): boolean => {
      const [first] = angleLine(dimension(0, sweep), place, style, '1°').arrows;
      const [, a, b] = first ?? [centre, centre, centre];
      return polar([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]).angle < 0;
    };
    expect(outside(radians(60))).toBe(false);
    expect(outside(radians(5))).toBe(true);
  });

  it('stands outside the arc, beyond a leg where the opening is too narrow', () => {
    const angle = (sweep: number, rest: Partial<AngleDimension> = {}): number =>
      polar(angleLine(dimension(0, sweep, rest), place, style, '30°').text.at).angle;
    expect(angle(radians(60))).toBeGreaterThan(0);
    expect(angle(radians(60))).toBeLessThan(radians(60));
    expect(angle(radians(4))).toBeGreaterThan(radians(4));
    expect(angle(radians(60), { beyond: 'from' })).toBeLessThan(0);
  });

  it('keeps a least radius however small the drawing', () => {
    const drawn = angleLine(dimension(0, 1), { scale: 1e-4, origin: [0, 0] }, style, '30°');
    const [first] = drawn.lines[0] ?? [];
    const corner = toPaper({ scale: 1e-4, origin: [0, 0] }, [50, 20]);
    expect(Math.hypot((first?.[0] ?? NaN) - corner[0], (first?.[1] ?? NaN) - corner[1])).toBeGreaterThan(9);
  });

  it('draws only the legs that are asked for', () => {
    const legs = (which: AngleDimension['legs']): number =>
      angleLine(dimension(0, 1, { legs: which }), place, style, '30°').extensions.length;
    expect([legs('both'), legs('from'), legs('to'), legs('none')]).toEqual([2, 1, 1, 0]);
  });
});

describe('angular', () => {
  it('takes the shorter way, counter-clockwise, whichever direction is named first', () => {
    fc.assert(
      fc.property(directions, directions, (a, b) => {
        const make = (one: number, other: number): AngleDimension =>
          angular({
            id: 'a',
            subject: 'axis',
            corner: [0, 0],
            reference: [Math.cos(one), Math.sin(one)],
            line: [Math.cos(other), Math.sin(other)],
            draw: 'reference',
            radius: 1,
            value: 1,
            name: 'a',
          });
        const made = make(a, b);
        expect(made.to - made.from).toBeGreaterThanOrEqual(0);
        expect(made.to - made.from).toBeLessThanOrEqual(Math.PI + 1e-9);
        expect(made.to - made.from).toBeCloseTo(turnBetween(a, b), 9);
        expect(turnBetween(made.legs === 'from' ? made.from : made.to, a)).toBeLessThan(1e-9);
      }),
    );
  });
});
