import fc from 'fast-check';
import { quat, vec3 as gl } from 'gl-matrix';
import { describe, expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { distance, type Vec3 } from '$lib/geometry/point.ts';
import { mendByMoving, mendByTurning, shimmed } from '$lib/proof/mend.ts';
import { passOf, stood } from '$lib/proof/standing.ts';
import { numberFrom } from '../numbers.ts';
import { off, planned } from './stands.ts';

const anyOff = fc.tuple(
  numberFrom(-15, 15),
  numberFrom(-15, 15),
  numberFrom(-5, 5),
  numberFrom(-4, 4),
  numberFrom(-3, 3),
  numberFrom(-1, 1),
);
const sides = fc.constantFrom('left' as const, 'right' as const);

const array = ({ x, y, z }: Vec3): [number, number, number] => [x, y, z];

describe('a card under an edge', () => {
  test('is a turn about the other edge of the cabinet, as a general rotation has it', () => {
    fc.assert(
      fc.property(
        anyOff,
        sides,
        numberFrom(0.1, 20),
        fc.constantFrom('front' as const, 'rear' as const),
        (by, side, card, where) => {
          const { cabinet, plan } = planned(side);
          const before = off(plan, [by[0], by[1], by[2], by[3], by[4], 0]);
          const [was, is] = [stood(cabinet, before), stood(cabinet, shimmed(cabinet, before, where, card))];
          const hinge = was.onBottom(where === 'front' ? cabinet.depth : 0, 0);
          const angle = Math.asin(card / cabinet.depth);
          const lifted = was.onBottom(where === 'front' ? 0 : cabinet.depth, 0);
          const turn = (way: 1 | -1): Vec3 => {
            const q = quat.setAxisAngle(quat.create(), array(was.inboard), way * angle);
            const from = gl.subtract(gl.create(), array(lifted), array(hinge));
            const [x = 0, y = 0, z = 0] = gl.add(gl.create(), gl.transformQuat(gl.create(), from, q), array(hinge));
            return { x, y, z };
          };
          const [a, b] = [turn(1), turn(-1)];
          const up = a.z > b.z ? a : b;
          expect(distance(is.onBottom(where === 'front' ? 0 : cabinet.depth, 0), up)).toBeLessThan(1e-3);
          expect(distance(is.onBottom(where === 'front' ? cabinet.depth : 0, 0), hinge)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  test.each([
    [200, 0.5, 0.1432],
    [200, 1, 0.2865],
    [150, 1, 0.382],
  ])('over %d mm of depth, %d mm turns by %d degrees', (depth, card, turn) => {
    const { cabinet, plan } = planned();
    const after = shimmed({ ...cabinet, depth }, plan, 'rear', card);
    expect(degrees(plan.tilt - after.tilt)).toBeCloseTo(turn, 4);
  });
});

describe('what to do', () => {
  test.each([
    ['a card and a turn', mendByTurning],
    ['a card and a move', mendByMoving],
  ])('%s bring the axis through the head', (_, mend) => {
    let mended = 0;
    fc.assert(
      fc.property(anyOff, sides, (by, side) => {
        const { cabinet, plan, head } = planned(side);
        const acts = mend(cabinet, off(plan, by), head);
        if (!acts) return;
        mended += 1;
        const last = acts.at(-1);
        expect(last?.then.miss).toBeLessThan(0.01);
        expect(last && passOf(cabinet, last.standing, head).miss).toBe(last?.then.miss);
        const card = acts[0];
        if (card?.act !== 'shim') throw new Error('the card comes first');
        expect(card.by).toBeGreaterThanOrEqual(0);
      }),
    );
    expect(mended).toBeGreaterThan(3);
  });

  test('a stand that stands as planned needs next to nothing', () => {
    const { cabinet, plan, head } = planned();
    const acts = mendByTurning(cabinet, plan, head);
    const [card, turn] = acts ?? [];
    expect(card?.act === 'shim' && card.by).toBeLessThan(1e-6);
    expect(turn?.act === 'turn' && Math.abs(turn.by)).toBeLessThan(1e-9);
  });

  test('a stand that is far off is to be made anew', () => {
    const { cabinet, plan, head } = planned();
    expect(mendByTurning(cabinet, off(plan, [0, 0, 0, 0, 25, 0]), head)).toBeNull();
  });
});
