import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { fitStanding } from '$lib/proof/fitStanding.ts';
import { expectedOf } from '$lib/proof/reading.ts';
import { isKnown, spreadOf } from '$lib/proof/spread.ts';
import { passOf, stood } from '$lib/proof/standing.ts';
import type { Taken } from '$lib/proof/taken.ts';
import { numberFrom } from '../numbers.ts';
import { gaussian } from './gaussian.ts';
import { apart, blank, off, planned, taken } from './stands.ts';

const anyOff = fc.tuple(
  numberFrom(-20, 20), numberFrom(-20, 20), numberFrom(-8, 8), numberFrom(-4, 4), numberFrom(-3, 3), numberFrom(-2, 2),
); // prettier-ignore
const sides = fc.constantFrom('left' as const, 'right' as const);

/** Sets that tell all six numbers, among them every kind of reading. */
const enough: Readonly<Record<string, readonly Taken[]>> = {
  'a rule, a protractor and a tape': [blank.front, blank.rear, blank.inboard, blank.toe, blank.mark],
  'a level across and along': [blank.front, blank.slope, blank.outboard, blank.toe, blank.mark],
  'two corners': [blank.front, blank.rise, blank.inboard, blank.corner, blank.inner],
  'a light on top': [blank.top, blank.mark, blank.front, blank.inboard],
  'a light at the baffle': [blank.baffle, blank.mark, blank.rear, blank.outboard, blank.lean],
  'the driver and the baffle': [blank.driver, blank.lean, blank.inboard, blank.corner, blank.inner],
};

/** Sets that leave something open. */
const short: Readonly<Record<string, readonly Taken[]>> = {
  'heights alone': [blank.front, blank.rear, blank.inboard, blank.outboard],
  'no toe': [blank.front, blank.rear, blank.mark],
  'no height': [blank.toe, blank.mark, blank.slope],
  'no tilt': [blank.toe, blank.mark, blank.front],
  'one reading': [blank.slope],
};

describe('a stand fitted to its readings', () => {
  test.each(Object.entries(enough))('is the one that was read: %s', (_, kinds) => {
    fc.assert(
      fc.property(anyOff, sides, (by, side) => {
        const it = planned(side);
        const true_ = off(it.plan, by);
        const fitted = fitStanding(taken(kinds, true_, it), it.cabinet, it.plan, it.around);
        if (!fitted) throw new Error('it can be reckoned with');
        expect(apart(fitted.standing, true_)).toBeLessThan(0.01);
        expect(fitted.chiSquared).toBeLessThan(1e-3);
        expect(isKnown(spreadOf(fitted, it.cabinet, it.head))).toBe(true);
      }),
    );
  });

  test.each(Object.entries(short))('says that it is not known: %s', (_, kinds) => {
    fc.assert(
      fc.property(anyOff, sides, (by, side) => {
        const it = planned(side);
        const fitted = fitStanding(taken(kinds, off(it.plan, by), it), it.cabinet, it.plan, it.around);
        expect(fitted && isKnown(spreadOf(fitted, it.cabinet, it.head))).toBe(false);
      }),
    );
  });

  test('what nothing tells stays as planned', () => {
    const it = planned();
    const fitted = fitStanding(
      taken([blank.slope], off(it.plan, [9, 9, 5, 3, 2, 0]), it),
      it.cabinet,
      it.plan,
      it.around,
    );
    expect(fitted?.standing.x).toBeCloseTo(it.plan.x, 6);
    expect(fitted?.standing.toe).toBeCloseTo(it.plan.toe, 9);
    expect(fitted && degrees(fitted.standing.tilt - it.plan.tilt)).toBeCloseTo(2, 4);
  });

  test('the 95 % ellipse holds the true pass as often as it says', () => {
    // 1,000 seeded fits: between 913 and 980 hold, or something is wrong at a false alarm of one in a million (binomial).
    const it = planned('left');
    const normal = gaussian(20261129);
    const kinds = [
      blank.front,
      blank.rear,
      blank.slope,
      blank.toe,
      blank.mark,
      blank.corner,
      blank.driver,
      blank.top,
      blank.inboard,
    ];
    const count = 1000;
    let held = 0;
    for (let run = 0; run < count; run += 1) {
      const by = [8, 8, 3, 2, 1, 0.5].map((span) => span * normal()) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      const real = off(it.plan, by);
      const fitted = fitStanding(taken(kinds, real, it, normal), it.cabinet, it.plan, it.around);
      if (!fitted) throw new Error('it can be reckoned with');
      const { pass } = spreadOf(fitted, it.cabinet, it.head);
      const [found, truth] = [passOf(it.cabinet, fitted.standing, it.head), passOf(it.cabinet, real, it.head)];
      const [dx, dz] = [truth.right - found.right, truth.over - found.over];
      const [c, s] = [Math.cos(pass.turn), Math.sin(pass.turn)];
      if (((dx * c + dz * s) / pass.major) ** 2 + ((dz * c - dx * s) / pass.minor) ** 2 <= 1) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(913);
    expect(held).toBeLessThanOrEqual(980);
  });

  test('slope of two heights as a sine bar has it: asin((h2 − h1)/L), with its spread', () => {
    // Worked by the GUM's law of propagation: 12 to 54.62 over 205 mm, 11.99946°; u(h) 0.1 mm gives 0.0404°.
    const it = planned('right');
    const span = it.cabinet.depth;
    const rise = 42.62 * (span / 205);
    const readings: Taken[] = [
      { what: 'front-height', value: 12 + rise, sure: 0.196 },
      { what: 'rear-height', value: 12, sure: 0.196 },
    ];
    const fitted = fitStanding(readings, it.cabinet, it.plan, { ...it.around, pad: 0 });
    if (!fitted) throw new Error('it can be reckoned with');
    expect(degrees(fitted.standing.tilt)).toBeCloseTo(11.99946, 4);
    const own = degrees(spreadOf(fitted, it.cabinet, it.head).standing.tilt) / 1.959964;
    const law = degrees((Math.SQRT2 * 0.1) / (span * Math.cos(fitted.standing.tilt)));
    expect(own / law).toBeCloseTo(1, 3);
  });

  test('heights of the stand count a pad under the cabinet', () => {
    const it = planned();
    const [bare] = expectedOf(blank.front, it.cabinet, stood(it.cabinet, it.plan), { ...it.around, pad: 0 });
    const [padded] = expectedOf(blank.front, it.cabinet, stood(it.cabinet, it.plan), { ...it.around, pad: 3 });
    expect((bare ?? 0) - (padded ?? 0)).toBeCloseTo(3 / Math.cos(it.plan.tilt), 9);
  });
});
