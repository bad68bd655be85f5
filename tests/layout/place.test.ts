import fc from 'fast-check';
import { quat, vec3 as glVec } from 'gl-matrix';
import { describe, expect, test } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { along, distance, dot, length, mirrorX, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { earsOf, headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Project, SideName } from '$lib/project/project.ts';
import { faultLine } from '$lib/project/fault.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { minimise } from '../minimise.ts';
import { runs } from '../runs.ts';

/** The worst a hit may miss by, mm: what the project promises. */
const HIT = 1e-6;

function pose(of: Project, side: SideName): Pose {
  const placed = placeSide(of.speaker, firstLayout(of), side);
  if (!placed.ok) throw new Error(placed.faults.map(faultLine).join('; '));
  return placed.value;
}

/** Runs a property on desks whose geometry has an answer on both sides. */
function onDesks(rules: Record<string, unknown>, check: (of: Project, poses: Record<SideName, Pose>) => void): void {
  let answered = 0;
  fc.assert(
    fc.property(anyDesk, (changes) => {
      const of = project({ ...changes, ...rules });
      const [left, right] = [
        placeSide(of.speaker, firstLayout(of), 'left'),
        placeSide(of.speaker, firstLayout(of), 'right'),
      ];
      if (!left.ok || !right.ok) return;
      answered++;
      check(of, { left: left.value, right: right.value });
    }),
    { numRuns: runs(300) },
  );
  expect(answered).toBeGreaterThan(runs(300) / 3);
}

/** Distance from a line to a point, in plan. */
function planMiss(at: Vec3, direction: Vec3, target: Vec3): number {
  const [dx, dy] = [target.x - at.x, target.y - at.y];
  return Math.abs(dx * direction.y - dy * direction.x) / Math.hypot(direction.x, direction.y);
}

describe('the axis', () => {
  test('hits the head when toe and tilt both aim at it', () => {
    onDesks({ '/layouts/0/aim/toe': { rule: 'to-head' } }, (_, poses) => {
      expect(poses.left.miss).toBeLessThan(HIT);
      expect(poses.right.miss).toBeLessThan(HIT);
    });
  });

  test('hits the ear on the loudspeaker’s own side', () => {
    onDesks({ '/layouts/0/aim/toe': { rule: 'to-ear' } }, (of, poses) => {
      const { desk, listener } = firstLayout(of);
      for (const side of ['left', 'right'] as const) {
        const ear = earsOf(listener, desk)[side];
        const { aimedPoint, forward } = poses[side];
        const reach = dot(subtract(ear, aimedPoint), forward);
        expect(distance(along(aimedPoint, forward, reach), ear)).toBeLessThan(HIT);
      }
    });
  });

  test('passes, in plan, the point behind the head', () => {
    onDesks({ '/layouts/0/aim/toe': { rule: 'behind-head', distance: 300 } }, (of, poses) => {
      const head = headOf(firstLayout(of).listener, firstLayout(of).desk);
      const behind = { ...head, y: head.y - 300 };
      for (const { aimedPoint, forward } of Object.values(poses)) {
        expect(planMiss(aimedPoint, forward, behind)).toBeLessThan(HIT);
      }
    });
  });

  test('is at ear height where it passes nearest the head in plan, whatever the toe', () => {
    onDesks({}, (of, poses) => {
      const { listener, desk, aim } = firstLayout(of);
      for (const side of ['left', 'right'] as const) {
        const target = aim.toe.rule === 'to-ear' ? earsOf(listener, desk)[side] : headOf(listener, desk);
        const { aimedPoint, forward } = poses[side];
        const level = Math.hypot(forward.x, forward.y);
        const [dx, dy] = [target.x - aimedPoint.x, target.y - aimedPoint.y];
        const reach = (dx * forward.x + dy * forward.y) / level ** 2;
        expect(reach).toBeGreaterThan(0);
        expect(along(aimedPoint, forward, reach).z).toBeCloseTo(target.z, 6);
      }
    });
  });

  test('misses by what a general minimiser finds', () => {
    onDesks({}, (of, poses) => {
      const head = headOf(firstLayout(of).listener, firstLayout(of).desk);
      const { aimedPoint, forward, miss } = poses.right;
      const nearest = minimise(([t = 0]) => distance(along(aimedPoint, forward, t), head), [500]);
      // The minimiser stops within about 1e-5 mm of the least value.
      expect(nearest.fx).toBeGreaterThanOrEqual(miss - 1e-9);
      expect(nearest.fx).toBeCloseTo(miss, 3);
    });
  });
});

describe('the frame of a placed cabinet', () => {
  test('agrees with rotations by gl-matrix', () => {
    onDesks({}, (of, { right }) => {
      // Toe turns about z: the front (−y) towards the middle (−x) is clockwise seen from above. Then tilt about the
      // front edge, which lies along the turned x axis.
      const turn = quat.create();
      quat.rotateZ(turn, turn, -right.toe);
      quat.rotateX(turn, turn, -right.elevation);
      const turned = (x: number, y: number, z: number): Vec3 => {
        const out = glVec.transformQuat(glVec.create(), glVec.fromValues(x, y, z), turn);
        return { x: out[0], y: out[1], z: out[2] };
      };
      // gl-matrix works in single precision.
      const near = (a: Vec3, b: Vec3): void => expect(distance(a, b)).toBeLessThan(1e-5);
      near(right.forward, turned(0, -1, 0));
      near(right.inboard, turned(-1, 0, 0));
      near(right.up, turned(0, 0, 1));
      expect(of.speaker.baffleRake).toBeCloseTo(degrees(right.elevation - right.tilt), 9);
    });
  });

  test('stands on its lift: the lowest corner is at the lift, the front edge over the mark', () => {
    onDesks({}, (of, poses) => {
      for (const { cabinet, lift, mark, frontEdgeHeight, rearEdgeHeight } of Object.values(poses)) {
        const bottom = cabinet.slice(0, 4);
        expect(Math.min(...bottom.map(({ z }) => z))).toBeCloseTo(lift, 9);
        const [outer, inner, rear] = bottom;
        if (!outer || !inner || !rear) throw new Error('a cabinet has four bottom corners');
        expect((outer.x + inner.x) / 2).toBeCloseTo(mark.x, 9);
        expect((outer.y + inner.y) / 2).toBeCloseTo(mark.y, 9);
        expect(outer.z).toBeCloseTo(frontEdgeHeight, 9);
        expect(rear.z).toBeCloseTo(rearEdgeHeight, 9);
        expect(distance(outer, inner)).toBeCloseTo(of.speaker.width, 9);
        expect(distance(inner, rear)).toBeCloseTo(of.speaker.depth, 9);
      }
    });
  });

  test('has unit vectors square to each other', () => {
    onDesks({}, (_, { left }) => {
      for (const v of [left.forward, left.inboard, left.up, left.rearLevel, left.rearSlope, left.bottomNormal]) {
        expect(length(v)).toBeCloseTo(1, 12);
      }
      expect(dot(left.forward, left.inboard)).toBeCloseTo(0, 12);
      expect(dot(left.forward, left.up)).toBeCloseTo(0, 12);
      expect(dot(left.rearSlope, left.bottomNormal)).toBeCloseTo(0, 12);
    });
  });
});

describe('symmetry', () => {
  test('a room mirrored about its middle has its answers mirrored, to the last digit', () => {
    onDesks({ '/speaker/mirrored': true }, (of, poses) => {
      const { listener, placement } = firstLayout(of);
      const swapped = structuredClone(of) as { -readonly [K in keyof Project]: Project[K] };
      const layout = {
        ...firstLayout(of),
        listener: { ...listener, offset: -listener.offset },
        placement: {
          left: { ...placement.right, x: -placement.right.x },
          right: { ...placement.left, x: -placement.left.x },
        },
      };
      const left = placeSide(swapped.speaker, layout, 'left');
      expect(left.ok && left.value.toe).toBe(poses.right.toe);
      expect(left.ok && left.value.tilt).toBe(poses.right.tilt);
      expect(left.ok && mirrorX(left.value.aimedPoint)).toEqual(poses.right.aimedPoint);
    });
  });

  test('an identical pair carries the offset the other way on the left', () => {
    const of = project({
      '/speaker/mirrored': false,
      '/speaker/drivers/0/offset': 20,
      '/layouts/0/aim/toe': { rule: 'straight' },
    });
    expect(pose(of, 'right').aimedPoint.x).toBeCloseTo(430 - 20, 12);
    expect(pose(of, 'left').aimedPoint.x).toBeCloseTo(-430 - 20, 12);
    const mirrored = project({ '/speaker/drivers/0/offset': 20, '/layouts/0/aim/toe': { rule: 'straight' } });
    expect(pose(mirrored, 'left').aimedPoint.x).toBeCloseTo(-430 + 20, 12);
  });
});

describe('the rules', () => {
  test('lift-to-ear with the tilt that tilt-to-ear found returns the lift', () => {
    onDesks({}, (of, poses) => {
      const layout = firstLayout(of);
      for (const side of ['left', 'right'] as const) {
        const rule = { rule: 'lift-to-ear', degrees: degrees(poses[side].tilt) } as const;
        const back = placeSide(of.speaker, { ...layout, aim: { ...layout.aim, tilt: rule } }, side);
        expect(back.ok && back.value.lift).toBeCloseTo(layout.stand.lift ?? NaN, 6);
      }
    });
  });

  test('as-set leaves toe, tilt and lift as they were set', () => {
    const set = pose(
      project({
        '/layouts/0/aim/toe': { rule: 'as-set', degrees: 21 },
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -4 },
      }),
      'right',
    );
    expect(set.toe).toBe(radians(21));
    expect(set.tilt).toBe(radians(-4));
    expect(set.lift).toBe(12);
    expect(set.frontEdgeHeight).toBe(12);
    expect(set.rearEdgeHeight).toBeCloseTo(12 + 205 * Math.sin(radians(4)), 12);
  });

  test('a low ear tilts the cabinet down, by the closed form, onto the ear', () => {
    const down = pose(project({ '/layouts/0/listener/earHeight': 880 }), 'right');
    expect(down.tilt).toBeLessThan(0);
    expect(down.miss).toBeLessThan(HIT);
    expect(down.frontEdgeHeight).toBe(12);
  });

  test('a raked baffle takes its rake off the tilt and leaves the axis where it was', () => {
    const low = { '/layouts/0/listener/earHeight': 880 };
    const plain = pose(project(low), 'right');
    const raked = pose(project({ ...low, '/speaker/baffleRake': 6 }), 'right');
    // Tilted down, the front edge stays on the lift, so nothing else changes.
    expect(raked.elevation).toBeCloseTo(plain.elevation, 12);
    expect(degrees(plain.tilt - raked.tilt)).toBeCloseTo(6, 10);
  });
});

describe('no answer', () => {
  const why = (changes: Record<string, unknown>, side: SideName = 'right'): string => {
    const of = project(changes);
    const placed = placeSide(of.speaker, firstLayout(of), side);
    if (placed.ok) throw new Error('expected no answer');
    return placed.faults.map(faultLine).join('\n');
  };

  test('the head nearer to the mark than the driver is to the middle', () => {
    expect(
      why({
        '/speaker/drivers/0/offset': 60,
        '/layouts/0/listener/setback': -300,
        '/layouts/0/listener/offset': 400,
      }),
    ).toBe(
      "/aim/toe: expected the head further from the mark in plan than the aimed point's offset of 60 mm, got 30 mm: move the mark or the seat, or aim through a driver nearer the baffle's middle (right loudspeaker)",
    );
  });

  test('a lift under zero, with the tilt that would do', () => {
    const text = why({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 30 } });
    expect(text).toMatch(
      /^\/aim\/tilt\/degrees: expected a tilt that leaves a lift of 0 mm or more, got -\d+(\.\d)? mm at 30°: tilt at most \d+\.\d+° \(right loudspeaker\)$/,
    );
    const most = Number(/at most ([\d.]+)°/.exec(text)?.[1]);
    const of = project({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: most - 0.01 } });
    expect(pose(of, 'right').lift).toBeGreaterThan(0);
    expect(pose(of, 'right').lift).toBeLessThan(1);
  });

  test('an ear too high for the steepest tilt says which lift would do', () => {
    const far = { '/layouts/0/listener/earHeight': 2400, '/layouts/0/listener/setback': -100 };
    const text = why(far);
    const lift = Number(/set the lift to ([\d.]+) mm/.exec(text)?.[1]);
    expect(text).toMatch(/^\/aim\/tilt: expected a tilt of at most 60°/);
    expect(pose(project({ ...far, '/layouts/0/stand/lift': lift + 0.1 }), 'right').miss).toBeLessThan(HIT);
  });

  test('a listener behind the baffle', () => {
    expect(why({ '/layouts/0/aim/toe': { rule: 'as-set', degrees: -80 } })).toMatch(
      /^\/aim\/toe: expected the ear in front of the baffle, got it \d+(\.\d)? mm behind/,
    );
  });
});
