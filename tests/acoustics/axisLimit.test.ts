import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axisHeight, axisLimit } from '$lib/acoustics/axisLimit.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';

const SPEED = 343.2;
const FAR = 1e7;

function posed(changes: Record<string, unknown>) {
  const of = project({ '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 }, ...changes });
  const pose = placeSide(of.speaker, firstLayout(of), 'right');
  if (!pose.ok) throw new Error('expected a pose');
  return { speaker: of.speaker, pose: pose.value };
}

/** A head so far away that all angles are those of the far field, as many degrees under a level axis. */
const headUnder = ({ aimedPoint, forward }: Pose, degrees: number) =>
  vec3(
    aimedPoint.x + FAR * forward.x,
    aimedPoint.y + FAR * forward.y,
    aimedPoint.z - FAR * Math.tan((degrees * Math.PI) / 180),
  );

test('far away a lobe ends where the handbook’s array of two does: d·sin δ = λ/4 in phase, a twelfth in quadrature', () => {
  fc.assert(
    fc.property(numberFrom(1500, 4000), numberFrom(-1, 1), (frequency, sign) => {
      const up = sign > 0 ? -60 : 60;
      const limit = (alignment: string, known: boolean) => {
        const { speaker, pose } = posed({
          '/speaker/crossovers/0': { between: ['tweeter', 'woofer'], frequency, alignment },
          '/speaker/drivers/1/acousticDepth': 0,
          '/speaker/drivers/0/diameter': 10,
          '/speaker/designPoint': known ? { driver: 'tweeter', distance: 10000 } : null,
        });
        return axisLimit(speaker, pose, headUnder(pose, up), SPEED);
      };
      const apart = 110;
      const wave = (SPEED * 1000) / frequency;
      // −3 dB is 10^(−3/20): a little more than half the power, so the phase is a little under the quarter and the twelfth.
      const halfPower = Math.acos(10 ** (-3 / 20));
      const inPhase = (2 * halfPower) / (2 * Math.PI);
      const quadrature = (2 * Math.acos(10 ** (-3 / 20) * Math.SQRT1_2) - Math.PI / 2) / (2 * Math.PI);
      // Lined up 10 m away: at the far head the drivers are 110²/20000 = 0.61 mm of path from that.
      expect(Math.abs(Math.sin(Math.abs(limit('in-phase', true)?.angle ?? NaN)) * apart - inPhase * wave)).toBeLessThan(
        0.62,
      );
      for (const alignment of ['in-phase', 'quadrature']) {
        expect(Math.sin(Math.abs(limit(alignment, false)?.angle ?? NaN)) * apart).toBeCloseTo(quadrature * wave, 3);
      }
      expect(inPhase).toBeCloseTo(1 / 4, 2);
      expect(quadrature).toBeCloseTo(1 / 12, 2);
    }),
  );
});

test('the beam ends where a flat piston is down by 3 dB: ka·sin δ = 1.6137 (the piston’s table)', () => {
  const { speaker, pose } = posed({
    '/speaker/crossovers': [],
    '/speaker/drivers/0/radiating': 60,
    '/speaker/drivers/0/diameter': 60,
  });
  const limit = axisLimit(speaker, pose, headUnder(pose, 60), SPEED);
  const ka = (2 * Math.PI * 10000 * 0.03) / SPEED;
  expect(ka * Math.sin(Math.abs(limit?.angle ?? NaN))).toBeCloseTo(1.6137, 3);
  expect(limit?.by).toEqual({ what: 'beam', driver: 'tweeter', frequency: 10000 });
});

test('height and angle are of one triangle, and ears on the axis have no limit', () => {
  const { speaker, pose } = posed({});
  const head = headUnder(pose, -3);
  const found = axisHeight(pose, head);
  expect(found?.angle).toBeCloseTo((-3 * Math.PI) / 180, 9);
  expect(found?.height).toBeCloseTo(-FAR * Math.tan((3 * Math.PI) / 180), 3);
  expect(axisLimit(speaker, pose, headUnder(pose, 0), SPEED)).toBeNull();
});
