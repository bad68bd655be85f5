import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aimSpread, type MeasuredSpread } from '$lib/layout/aimSpread.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Project } from '$lib/project/project.ts';
import { byTape, type SureKey } from '$lib/project/sure.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { earSensitivity } from './earSensitivity.ts';

const spread = (of: Project, side: 'left' | 'right' = 'right'): MeasuredSpread => {
  const found = aimSpread(of.speaker, firstLayout(of), side, of.sure);
  if (!found) throw new Error('the demo has an answer');
  return found;
};

/** Everything exact but for one value. */
const onlySure = (key: SureKey, by: number): Record<string, number> => ({
  ...Object.fromEntries(Object.keys(byTape).map((one) => [one, 0])),
  [key]: by,
});

describe('how far an aim may be off', () => {
  test('is nothing when every value is exact', () => {
    const exact = project({ '/sure': Object.fromEntries(Object.keys(byTape).map((key) => [key, 0])) });
    expect(spread(exact).all).toEqual({ toe: 0, tilt: 0, lift: 0 });
  });

  test('by a small doubt of the ear height is that times the exact derivative', () => {
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const SMALL = 0.01;
        const of = project({ ...changes, '/sure': onlySure('earHeight', SMALL) });
        const layout = firstLayout(of);
        const pose = placeSide(of.speaker, layout, 'right');
        // At tilt 0 the derivative jumps: the front edge comes off the desk.
        fc.pre(pose.ok && Math.abs(pose.value.tilt) > 0.001);
        const { tilt, lift } = earSensitivity(of.speaker, layout, pose.value);
        const { all } = spread(of);
        expect(all.toe).toBe(0);
        // A central difference is off by its third derivative: under a millionth of a step of a hundredth of a millimetre.
        expect(all.tilt).toBeCloseTo(Math.abs(tilt) * SMALL, 9);
        expect(all.lift).toBeCloseTo(Math.abs(lift) * SMALL, 9);
      }),
    );
  });

  test('sideways, of a toe to the head, is the doubt seen from the mark', () => {
    // Toe is atan(x / run) with the head in the middle: its derivative is run / distance², from the desk's own numbers.
    const of = project({ '/sure': onlySure('markX', 1) });
    const { placement, listener } = firstLayout(of);
    const run = placement.right.y + listener.setback;
    const squared = run ** 2 + placement.right.x ** 2;
    const each = spread(of);
    // The second order cancels in a central difference; the third is under 1 / distance³.
    expect(Math.abs(each.all.toe - run / squared)).toBeLessThan(squared ** -1.5);
    expect(each.by.get('markX')?.toe).toBe(each.all.toe);
  });

  test('adds up as a root of squares, and mirrors', () => {
    const each = spread(project());
    for (const part of ['toe', 'tilt', 'lift'] as const) {
      const squares = [...each.by.values()].map((one) => (one?.[part] ?? 0) ** 2);
      expect(each.all[part]).toBeCloseTo(Math.sqrt(squares.reduce((sum, one) => sum + one, 0)), 12);
    }
    expect(spread(project(), 'left')).toEqual(each);
  });

  test('never shrinks when a value is less sure', () => {
    fc.assert(
      fc.property(anyDesk, fc.constantFrom('earHeight', 'setback', 'markX', 'driverHeight'), (changes, key) => {
        const at = (by: number) => {
          const of = project({ ...changes, '/sure': { [key]: by } });
          return aimSpread(of.speaker, firstLayout(of), 'right', of.sure)?.all;
        };
        const [less, more] = [at(1), at(4)];
        fc.pre(less !== undefined && more !== undefined);
        for (const part of ['toe', 'tilt', 'lift'] as const) expect(more[part]).toBeGreaterThanOrEqual(less[part]);
      }),
    );
  });

  test('is lift where tilt is given', () => {
    const given = project({
      '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 12 },
      '/sure': onlySure('earHeight', 10),
    });
    expect(spread(given).all).toEqual({ toe: 0, tilt: 0, lift: expect.closeTo(10, 9) });
  });

  test('has no answer where the aim has none', () => {
    const none = project({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 60 } });
    expect(aimSpread(none.speaker, firstLayout(none), 'right', none.sure)).toBeNull();
  });

  test('takes the one side that has an answer', () => {
    // The lift solved for this tilt is small: an ear that much lower would need a stand below the desk.
    const edge = { '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 10 } };
    const lift = placeSide(project(edge).speaker, firstLayout(project(edge)), 'right');
    const most = lift.ok ? lift.value.lift : 0;
    const once = spread(project({ ...edge, '/sure': onlySure('earHeight', most + 5) }));
    expect(once.by.get('earHeight')?.lift).toBeCloseTo(most + 5, 9);
  });
});

describe('what the spreads hold', () => {
  /** Numbers from 0 to 1 that are the same every time (a linear congruential generator, Numerical Recipes' constants, from memory). */
  function randoms(seed: number): () => number {
    let state = seed >>> 0;
    return () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
  }

  /** The project with every measured value anywhere in its span; each kind of value off by one and the same. */
  function measuredAgain(of: Project, random: () => number): Project {
    const off = Object.fromEntries(Object.entries(of.sure).map(([key, by]) => [key, (2 * random() - 1) * by]));
    const by = (key: SureKey): number => off[key] ?? 0;
    const layout = firstLayout(of);
    const { desk, listener, placement } = layout;
    const mark = ({ x, y, on }: { x: number; y: number; on: string }) => ({
      x: x + by('markX'),
      y: y + by('markY'),
      on,
    });
    return {
      ...of,
      speaker: {
        ...of.speaker,
        depth: of.speaker.depth + by('speakerDepth'),
        baffleRake: of.speaker.baffleRake + by('baffleRake'),
        drivers: of.speaker.drivers.map((driver) => ({
          ...driver,
          height: driver.height + by('driverHeight'),
          offset: driver.offset + by('driverOffset'),
        })),
      },
      layouts: [
        {
          ...layout,
          desk: { ...desk, height: desk.height + by('deskHeight') },
          listener: {
            ...listener,
            earHeight: listener.earHeight + by('earHeight'),
            setback: listener.setback + by('setback'),
            offset: listener.offset + by('headOffset'),
          },
          placement: { left: mark(placement.left), right: mark(placement.right) },
        },
      ],
    };
  }

  const TRIALS = 4000;

  test.each([
    ['the demo', {}],
    ['a near seat', { '/layouts/0/listener/setback': 60, '/layouts/0/placement/right/y': 200 }],
    [
      'two spans alike',
      { '/sure': { ...Object.fromEntries(Object.keys(byTape).map((key) => [key, 0])), earHeight: 10, deskHeight: 10 } },
    ],
    [
      'one span alone',
      { '/sure': { ...Object.fromEntries(Object.keys(byTape).map((key) => [key, 0])), earHeight: 10 } },
    ],
  ] satisfies [string, Record<string, unknown>][])(
    '%s: values drawn evenly from their spans stay within the root of squares nine times in ten, within the most always',
    (_, changes) => {
      const of = project(changes);
      const { all, most } = spread(of);
      const base = placeSide(of.speaker, firstLayout(of), 'right');
      if (!base.ok || most === null) throw new Error('this scene has an answer, and so have its corners');
      const random = randoms(20260501);
      const within = { toe: 0, tilt: 0 };
      for (let trial = 0; trial < TRIALS; trial++) {
        const again = measuredAgain(of, random);
        const pose = placeSide(again.speaker, firstLayout(again), 'right');
        if (!pose.ok) throw new Error('every scene within the spans has an answer');
        for (const part of ['toe', 'tilt'] as const) {
          const off = Math.abs(pose.value[part] - base.value[part]);
          expect(off).toBeLessThanOrEqual(most[part] + 1e-12);
          if (off <= all[part] * (1 + 1e-6)) within[part] += 1;
        }
      }
      // Three standard deviations of the count under 90 %.
      const least = 0.9 * TRIALS - 3 * Math.sqrt(TRIALS * 0.9 * 0.1);
      expect(within.tilt).toBeGreaterThan(least);
      expect(within.toe).toBeGreaterThan(least);
      // What is certain is wider, or the one span alone.
      expect(most.tilt).toBeGreaterThan(all.tilt * 0.99);
    },
  );

  test('two even spans alike: 1 − (2 − √2)²/4 = 91.4 %, as the sum of two even errors has it', () => {
    const random = randoms(7);
    let within = 0;
    for (let trial = 0; trial < 40000; trial++) if (Math.abs(random() + random() - 1) * 2 <= Math.SQRT2) within += 1;
    const share = 1 - (2 - Math.SQRT2) ** 2 / 4;
    expect(Math.abs(within / 40000 - share)).toBeLessThan(3 * Math.sqrt((share * (1 - share)) / 40000));
  });
});
