import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axisHeight, axisLimit, turnToEars } from '$lib/acoustics/axisLimit.ts';
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

const apart = 110;
const crossed = (frequency: number, alignment = 'in-phase', designPoint: unknown = null) => ({
  '/speaker/crossovers/0': { between: ['tweeter', 'woofer'], frequency, alignment },
  '/speaker/drivers/1/acousticDepth': 0,
  '/speaker/drivers/0/diameter': 10,
  '/speaker/designPoint': designPoint,
});

test('far away a lobe ends where the handbook’s array of two does: d·sin δ = λ/4 in phase', () => {
  fc.assert(
    fc.property(numberFrom(1500, 4000), numberFrom(-1, 1), (frequency, sign) => {
      const { speaker, pose } = posed(crossed(frequency, 'in-phase', { driver: 'tweeter', distance: 10000 }));
      const limit = axisLimit(speaker, pose, headUnder(pose, sign > 0 ? -60 : 60), SPEED);
      const wave = (SPEED * 1000) / frequency;
      // −3 dB is 10^(−3/20): a little more than half the power, so the phase is a little under the quarter.
      const inPhase = (2 * Math.acos(10 ** (-3 / 20))) / (2 * Math.PI);
      // Lined up 10 m away: at the far head the drivers are 110²/20000 = 0.61 mm of path from that.
      expect(Math.abs(Math.sin(Math.abs(limit?.angle ?? NaN)) * apart - inPhase * wave)).toBeLessThan(0.62);
      expect(limit?.by.what).toBe('lobe');
      expect(inPhase).toBeCloseTo(1 / 4, 2);
    }),
  );
});

test('where nobody said how the drivers are lined up no lobe limits anything, and only their turn is known: 2π·d·sin δ/λ', () => {
  fc.assert(
    fc.property(
      numberFrom(1500, 4000),
      numberFrom(-20, 20),
      fc.constantFrom('in-phase', 'quadrature'),
      (frequency, down, alignment) => {
        const { speaker, pose } = posed(crossed(frequency, alignment));
        const head = headUnder(pose, down);
        const told = turnToEars(speaker, pose, head, SPEED);
        const wave = (SPEED * 1000) / frequency;
        expect(told?.turn).toBeCloseTo((2 * Math.PI * apart * Math.abs(Math.sin((down * Math.PI) / 180))) / wave, 3);
        expect(told?.between).toEqual(['tweeter', 'woofer']);
        // A dome of 10 mm at most beams nowhere near 20°.
        expect(axisLimit(speaker, pose, head, SPEED)).toBeNull();
      },
    ),
  );
  const lined = posed(crossed(2500, 'in-phase', { driver: 'tweeter', distance: 1000 }));
  expect(turnToEars(lined.speaker, lined.pose, headUnder(lined.pose, 20), SPEED)).toBeNull();
  const single = posed({ '/speaker/crossovers': [] });
  expect(turnToEars(single.speaker, single.pose, headUnder(single.pose, 20), SPEED)).toBeNull();
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
