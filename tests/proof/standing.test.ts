import fc from 'fast-check';
import { quat, vec3 as gl } from 'gl-matrix';
import { expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { distance } from '$lib/geometry/point.ts';
import { passOf, stood } from '$lib/proof/standing.ts';
import { anyDesk, project } from '../projects.ts';
import { numberFrom } from '../numbers.ts';
import { off, planned } from './stands.ts';

const sides = fc.constantFrom('left' as const, 'right' as const);

test('a stand as planned stands as the plan has it, on any desk', () => {
  let answered = 0;
  fc.assert(
    fc.property(anyDesk, sides, (desk, side) => {
      let it: ReturnType<typeof planned>;
      try {
        it = planned(side, project(desk));
      } catch {
        return;
      }
      answered += 1;
      const { pose, cabinet, plan, head } = it;
      const at = stood(cabinet, plan);
      expect(distance(at.forward, pose.forward)).toBeLessThan(1e-12);
      expect(distance(at.up, pose.up)).toBeLessThan(1e-12);
      expect(distance(at.rear, pose.rearSlope)).toBeLessThan(1e-12);
      expect(distance(at.onBaffle(cabinet.aimed), pose.aimedPoint)).toBeLessThan(1e-9);
      pose.drivers.forEach(({ position }, i) => {
        const driver = cabinet.drivers[i];
        expect(driver && distance(at.onBaffle(driver), position)).toBeLessThan(1e-9);
      });
      expect(passOf(cabinet, plan, head).miss).toBeCloseTo(pose.miss, 8);
    }),
  );
  expect(answered).toBeGreaterThan(3);
});

test('toe, tilt and roll are turns about the plumb line, the front edge and the depth, as quaternions have them', () => {
  fc.assert(
    fc.property(numberFrom(-40, 40), numberFrom(-30, 30), numberFrom(-10, 10), (toe, tilt, roll) => {
      const { cabinet, plan } = planned();
      const at = stood(cabinet, { ...plan, toe: radians(toe), tilt: radians(tilt), roll: radians(roll) });
      // The right cabinet faces −y; its front turns to −x with positive toe, its front edge runs along −x.
      const turn = quat.create();
      quat.multiply(turn, turn, quat.setAxisAngle(quat.create(), [0, 0, 1], -radians(toe)));
      quat.multiply(turn, turn, quat.setAxisAngle(quat.create(), [1, 0, 0], -radians(tilt)));
      quat.multiply(turn, turn, quat.setAxisAngle(quat.create(), [0, 1, 0], radians(roll)));
      const image = (v: [number, number, number]) => gl.transformQuat(gl.create(), v, turn);
      const close = (a: { x: number; y: number; z: number }, v: [number, number, number]) => {
        const [x = 0, y = 0, z = 0] = image(v);
        expect(distance(a, { x, y, z })).toBeLessThan(1e-6);
      };
      close(at.rear, [0, 1, 0]);
      close(at.inboard, [-1, 0, 0]);
      close(at.normal, [0, 0, 1]);
    }),
  );
});

test('the pass is told as it is seen from the chair', () => {
  const { cabinet, plan, head } = planned('right');
  // Turned inwards, the right loudspeaker's axis passes to the left of the head; raised, over it.
  expect(passOf(cabinet, off(plan, [0, 0, 0, 1, 0, 0]), head).right).toBeLessThan(-5);
  expect(passOf(cabinet, off(plan, [0, 0, 0, 0, 1, 0]), head).over).toBeGreaterThan(5);
  const left = planned('left');
  expect(passOf(left.cabinet, off(left.plan, [0, 0, 0, 1, 0, 0]), left.head).right).toBeGreaterThan(5);
});
