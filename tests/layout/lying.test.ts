import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { add, cross, distance, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { baffleLength, topDepth } from '$lib/project/cabinet.ts';
import { sideNames, type SideName, type Speaker } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { cabinetCentre } from '$lib/stand/weights.ts';
import { numberFrom } from '../numbers.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

type Way = 'tweeter-inboard' | 'tweeter-outboard';

/** A vector turned about a unit vector (Rodrigues). */
const turnedAbout = (axis: Vec3, angle: number, v: Vec3): Vec3 =>
  add(
    add(scale(v, Math.cos(angle)), scale(cross(axis, v), Math.sin(angle))),
    scale(axis, dot(axis, v) * (1 - Math.cos(angle))),
  );

/** An upright cabinet's points, from the middle of its front bottom edge: x inboard, y rearwards, z up. */
function uprightPoints(speaker: Speaker) {
  const rake = radians(speaker.baffleRake);
  const baffle = (height: number, offset: number): Vec3 =>
    vec3(offset, height * Math.sin(rake), height * Math.cos(rake));
  const long = baffleLength(speaker);
  const half = speaker.width / 2;
  return {
    drivers: speaker.drivers.map(({ height, offset }) => baffle(height, offset)),
    corners: [-half, half].flatMap((x) => [
      vec3(x, 0, 0),
      vec3(x, speaker.depth, 0),
      baffle(long, x),
      vec3(x, speaker.height * Math.tan(rake) + topDepth(speaker), speaker.height),
    ]),
    balance: speaker.centreOfMass && vec3(0, speaker.centreOfMass.depth, speaker.centreOfMass.height),
    normal: vec3(0, -Math.cos(rake), Math.sin(rake)),
    up: baffle(1, 0),
  };
}

/** The same turned a quarter about the baffle's normal, seen from the middle of the edge that is then its lowest. */
function lyingPoints(speaker: Speaker, way: Way, side: SideName) {
  const flipped = side === 'left' && !speaker.mirrored ? -1 : 1;
  const points = uprightPoints({
    ...speaker,
    drivers: speaker.drivers.map((driver) => ({ ...driver, offset: flipped * driver.offset })),
  });
  const { normal, up } = points;
  const inboard = vec3(1, 0, 0);
  const top = way === 'tweeter-inboard' ? 1 : -1;
  // The turn that takes what was up to where the top lies.
  const angle = ([1, -1] as const)
    .map((sign) => (sign * Math.PI) / 2)
    .find((one) => dot(turnedAbout(normal, one, up), inboard) * top > 0.5);
  if (angle === undefined) throw new Error('expected a quarter turn');
  const turn = (v: Vec3): Vec3 => turnedAbout(normal, angle, v);
  const middle = turn(add(scale(up, baffleLength(speaker) / 2), scale(inboard, top * (speaker.width / 2))));
  const seen = (v: Vec3): Vec3 => {
    const from = subtract(turn(v), middle);
    return vec3(dot(from, inboard), -dot(from, normal), dot(from, up));
  };
  return {
    drivers: points.drivers.map(seen),
    corners: points.corners.map(seen),
    balance: points.balance && seen(points.balance),
  };
}

/** A point of a pose as its cabinet sees it. */
function inCabinet(pose: Pose, point: Vec3): Vec3 {
  const from = subtract(point, vec3(pose.mark.x, pose.mark.y, pose.mark.z + pose.frontEdgeHeight));
  return vec3(dot(from, pose.inboard), dot(from, pose.rearSlope), dot(from, pose.bottomNormal));
}

const nearest = (point: Vec3, points: readonly Vec3[]): number =>
  Math.min(...points.map((one) => distance(point, one)));

describe('a cabinet on its side', () => {
  test('is the upright one turned a quarter about its baffle’s normal, as a general rotation turns it', () => {
    let posed = 0;
    fc.assert(
      fc.property(
        anyDesk,
        fc.constantFrom<Way>('tweeter-inboard', 'tweeter-outboard'),
        numberFrom(40, 160),
        (changes, way, balance) => {
          const of = project({
            ...changes,
            '/speaker/lying': way,
            '/speaker/centreOfMass': { depth: Math.min(90, Number(changes['/speaker/depth'])), height: balance },
          });
          for (const side of sideNames) {
            const placed = placeSide(of.speaker, firstLayout(of), side);
            if (!placed.ok) continue;
            posed++;
            const pose = placed.value;
            const expected = lyingPoints(of.speaker, way, side);
            pose.drivers.forEach(({ position }, index) => {
              expect(distance(inCabinet(pose, position), expected.drivers[index] ?? vec3(NaN, 0, 0))).toBeLessThan(
                1e-9,
              );
            });
            const corners = pose.cabinet.map((corner) => inCabinet(pose, corner));
            for (const corner of corners) expect(nearest(corner, expected.corners)).toBeLessThan(1e-9);
            for (const corner of expected.corners) expect(nearest(corner, corners)).toBeLessThan(1e-9);
            const centre = inCabinet(pose, cabinetCentre(asStood(of.speaker), pose));
            expect(distance(centre, expected.balance ?? vec3(NaN, 0, 0))).toBeLessThan(1e-9);
          }
        },
      ),
      { numRuns: runs(300) },
    );
    expect(posed).toBeGreaterThan(runs(300) / 3);
  });

  // Computed from the box's middle: new height w/2 ± offset, new offset ∓(height − h/2).
  test.each<[Way, number, number, number]>([
    ['tweeter-inboard', 0, 82.5, 70],
    ['tweeter-outboard', 0, 82.5, -70],
    ['tweeter-inboard', 12, 70.5, 70],
    ['tweeter-outboard', 12, 94.5, -70],
  ])(
    '165 × 270, %s: a tweeter 205 up and %d beside the middle is %d up and %d beside it',
    (way, offset, up, beside) => {
      const stood = asStood(project({ '/speaker/lying': way, '/speaker/drivers/0/offset': offset }).speaker);
      expect(stood.drivers[0]).toMatchObject({ height: up, offset: beside });
      expect([stood.width, stood.height, stood.depth]).toEqual([270, 165, 205]);
      const [tweeter, woofer] = stood.drivers;
      if (!tweeter || !woofer) throw new Error('expected two drivers');
      // 110 mm from driver to driver, as upright.
      expect(Math.hypot(tweeter.height - woofer.height, tweeter.offset - woofer.offset)).toBeCloseTo(
        Math.hypot(110, offset),
        12,
      );
    },
  );

  test('is itself once it lies, and an upright one always', () => {
    const lying = asStood(project({ '/speaker/lying': 'tweeter-inboard' }).speaker);
    expect(asStood(lying)).toBe(lying);
    const { speaker } = project();
    expect(asStood(speaker)).toBe(speaker);
  });

  test('of the other side is its mirror image in a mirrored room', () => {
    const of = project({ '/speaker/lying': 'tweeter-inboard', '/speaker/mirrored': true });
    const [left, right] = sideNames.map((side) => placeSide(of.speaker, firstLayout(of), side));
    if (!left?.ok || !right?.ok) throw new Error('expected two poses');
    left.value.cabinet.forEach(({ x, y, z }, index) => {
      expect(right.value.cabinet[index]).toEqual({ x: -x, y, z });
    });
  });
});
