import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { angleBetween, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { earsOf, headIn, headOf, posturesServed } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { solveSharedAim } from '$lib/layout/sharedAim.ts';
import { sideNames, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import { faultLine } from '$lib/project/fault.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { minimise } from '../minimise.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

describe('from a point that does not move', () => {
  // Smallest cones round the directions to these heads: computed apart, by the smallest circles that pairs and triples of directions span on a sphere.
  const at: Vec3 = vec3(430, 300, 217);
  const still = { depth: 0, rake: 0, height: 0, offset: 0, toe: null, tilt: null, lift: 0 } as const;
  const two: readonly Vec3[] = [vec3(0, -180, 445), vec3(0, -60, 415)];
  test.each([
    { heads: two, toe: 45.959802, elevation: 19.511255, worst: 3.869385 },
    { heads: [...two, vec3(-80, -180, 445)], toe: 45.959802, elevation: 19.511255, worst: 3.869385 },
    {
      heads: [...two, vec3(-80, -180, 445), vec3(0, -250, 865)],
      toe: 42.942521,
      elevation: 30.521036,
      worst: 12.955338,
    },
  ])('is the axis of the smallest cone round $heads.length heads', ({ heads, toe, elevation, worst }) => {
    const [first, ...rest] = heads.map((head) => ({ from: subtract(head, at), weight: 1 }));
    if (!first) throw new Error('there is a head');
    const solved = solveSharedAim({ ...still, served: [first, ...rest], by: 'worst' });
    if (!solved.ok) throw new Error('it has an answer');
    expect(degrees(solved.value.toe)).toBeCloseTo(toe, 6);
    expect(degrees(solved.value.tilt)).toBeCloseTo(elevation, 6);
    const [sinToe, cosToe] = [Math.sin(solved.value.toe), Math.cos(solved.value.toe)];
    const [sinUp, cosUp] = [Math.sin(solved.value.tilt), Math.cos(solved.value.tilt)];
    const axis = vec3(-sinToe * cosUp, -cosToe * cosUp, sinUp);
    const angles = heads.map((head) => degrees(angleBetween(axis, subtract(head, at))));
    expect(Math.max(...angles)).toBeCloseTo(worst, 6);
  });
});

const postures = fc
  .array(fc.record({ setback: numberFrom(-50, 900), earHeight: numberFrom(950, 1500), weight: numberFrom(0.1, 5) }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((all) => all.map((one, index) => ({ name: `posture ${index}`, ...one })));
const tilts = fc.oneof(
  { weight: 3, arbitrary: fc.constant({ rule: 'tilt-to-ear' }) },
  { weight: 1, arbitrary: numberFrom(-5, 25).map((degrees) => ({ rule: 'lift-to-ear', degrees })) },
  { weight: 1, arbitrary: numberFrom(-5, 25).map((degrees) => ({ rule: 'as-set', degrees })) },
);
const by = fc.constantFrom('worst', 'mean');

type Changes = Readonly<Record<string, unknown>>;
const shared = fc.record({ changes: anyDesk, postures, tilt: tilts, by }).map(({ changes, postures, tilt, by }) => ({
  ...changes,
  '/layouts/0/listener/postures': postures,
  '/layouts/0/aim/tilt': tilt,
  '/layouts/0/aim/over': { postures: 'all', by },
}));

const placed = (of: Project, side: SideName, changes: Partial<Layout['aim']> = {}, lift?: number): Pose | null => {
  const layout = firstLayout(of);
  const stand = lift === undefined ? layout.stand : { ...layout.stand, lift };
  const pose = placeSide(of.speaker, { ...layout, aim: { ...layout.aim, ...changes }, stand }, side);
  return pose.ok ? pose.value : null;
};

/** What counts of each head, the seat first: the head, or the ear on the loudspeaker's side. */
function targets(of: Project, side: SideName): readonly { readonly at: Vec3; readonly weight: number }[] {
  const { listener, desk, aim } = firstLayout(of);
  const seats = [
    { at: headOf(listener, desk), weight: 1 },
    ...posturesServed(firstLayout(of)).map((one) => ({ at: headIn(one, firstLayout(of), side), weight: one.weight })),
  ];
  const aside = aim.toe.rule === 'to-ear' ? earsOf(listener, desk)[side].x - headOf(listener, desk).x : 0;
  return seats.map(({ at, weight }) => ({ at: vec3(at.x + aside, at.y, at.z), weight }));
}

/** What has to be least, rad: the largest angle, or the root of the weighted mean square. */
function judged(of: Project, side: SideName, { forward, aimedPoint }: Pick<Pose, 'forward' | 'aimedPoint'>): number {
  const all = targets(of, side).map(({ at, weight }) => ({
    angle: angleBetween(forward, subtract(at, aimedPoint)),
    weight,
  }));
  if (firstLayout(of).aim.over?.by !== 'mean') return Math.max(...all.map(({ angle }) => angle));
  const total = all.reduce((sum, { weight }) => sum + weight, 0);
  return Math.sqrt(all.reduce((sum, { angle, weight }) => sum + (weight * angle * angle) / total, 0));
}

function onShared(make: fc.Arbitrary<Changes>, check: (of: Project, poses: Record<SideName, Pose>) => void): void {
  let answered = 0;
  fc.assert(
    fc.property(make, (changes) => {
      const of = project(changes);
      const [left, right] = [placed(of, 'left'), placed(of, 'right')];
      if (!left || !right) return;
      answered++;
      check(of, { left, right });
    }),
    { numRuns: runs(300) },
  );
  expect(answered).toBeGreaterThan(runs(300) / 3);
}

describe('one aim for several postures', () => {
  test('is what a general minimiser finds, over what the rules leave open', () => {
    onShared(shared, (of, poses) => {
      const { aim, stand } = firstLayout(of);
      for (const side of sideNames) {
        const pose = poses[side];
        const isToeOpen = ['to-head', 'to-ear'].includes(aim.toe.rule);
        const at = (x: readonly number[]): number => {
          const [dToe = 0, dSecond = 0] = x;
          const toe = { rule: 'as-set' as const, degrees: degrees(pose.toe) + (isToeOpen ? dToe : 0) };
          const tilt = degrees(pose.tilt) + (aim.tilt.rule === 'tilt-to-ear' ? dSecond : 0);
          const lift = aim.tilt.rule === 'lift-to-ear' ? pose.lift + 10 * dSecond : (stand.lift ?? 0);
          const tried =
            Math.abs(tilt) > 60 || lift < 0
              ? null
              : placed(of, side, { toe, tilt: { rule: 'as-set', degrees: tilt }, over: null }, lift);
          return tried ? judged(of, side, tried) : 10;
        };
        const own = judged(of, side, pose);
        expect(at([0, 0])).toBeCloseTo(own, 12);
        for (const start of [
          [0, 0],
          [3, -3],
        ]) {
          // Neither the kink of a worst case nor that of a level cabinet lets the simplex come closer, and none may pass.
          expect(minimise(at, start).fx).toBeGreaterThan(own - 1e-12);
        }
      }
    });
  });

  test('never leaves a worse worst than the aim for the seat alone', () => {
    let better = 0;
    onShared(shared, (of, poses) => {
      for (const side of sideNames) {
        const plain = placed(of, side, { over: null });
        if (!plain) continue;
        const [own, alone] = [judged(of, side, poses[side]), judged(of, side, plain)];
        expect(own).toBeLessThanOrEqual(alone + 1e-12);
        if (own < alone - 1e-3) better++;
      }
    });
    expect(better).toBeGreaterThan(runs(300) / 4);
  });

  const hitting = {
    '/layouts/0/aim/toe': { rule: 'to-head' },
    '/layouts/0/aim/tilt': { rule: 'tilt-to-ear' },
  };

  test('is the plain aim, to the last digit, where nobody else counts', () => {
    const alone = fc.constantFrom({ postures: 'all' }, { postures: [] });
    onShared(
      fc.tuple(shared, alone).map(([changes, over]) => ({
        ...changes,
        '/layouts/0/aim/over': over,
        ...(over.postures === 'all' && { '/layouts/0/listener/postures': [] }),
      })),
      (of, poses) => {
        for (const side of sideNames) expect(placed(of, side, { over: null })).toEqual(poses[side]);
      },
    );
  });

  test('is the plain aim where every posture is the seat: both hit', () => {
    onShared(
      shared.map((changes) => {
        const at: Changes = changes;
        const [setback, earHeight] = [at['/layouts/0/listener/setback'], at['/layouts/0/listener/earHeight']];
        const same = changes['/layouts/0/listener/postures'].map((one) => ({ ...one, setback, earHeight }));
        return { ...changes, ...hitting, '/layouts/0/listener/postures': same };
      }),
      (of, poses) => {
        for (const side of sideNames) {
          const plain = placed(of, side, { over: null });
          if (!plain) continue;
          expect(poses[side].toe).toBeCloseTo(plain.toe, 10);
          expect(poses[side].tilt).toBeCloseTo(plain.tilt, 10);
        }
      },
    );
  });

  test('leaves two heads alike far off the axis, or more, where the worst is least', () => {
    let apart = 0;
    onShared(
      shared.map((changes) => ({ ...changes, ...hitting, '/layouts/0/aim/over': { postures: 'all', by: 'worst' } })),
      (of, poses) => {
        const { forward, aimedPoint, tilt } = poses.right;
        // At an end of the tilts, and level, where the path of the aimed point has a corner, one head alone may be the worst.
        if (Math.abs(tilt) < 1e-9 || Math.abs(tilt) > radians(59)) return;
        const angles = targets(of, 'right').map(({ at }) => angleBetween(forward, subtract(at, aimedPoint)));
        const [most = 0, next = 0] = angles.sort((a, b) => b - a);
        expect(most - next).toBeLessThan(1e-11);
        apart++;
      },
    );
    expect(apart).toBeGreaterThan(runs(300) / 4);
  });

  test('is the same in any order', () => {
    onShared(shared, (of, poses) => {
      const layout = firstLayout(of);
      const { postures } = layout.listener;
      const turned = { ...layout, listener: { ...layout.listener, postures: [...postures].reverse() } };
      for (const side of sideNames) {
        const other = placeSide(of.speaker, turned, side);
        if (!other.ok) throw new Error(other.faults.map(faultLine).join());
        expect(other.value.toe).toBeCloseTo(poses[side].toe, 10);
        expect(other.value.tilt).toBeCloseTo(poses[side].tilt, 10);
      }
    });
  });

  test('mirrors with the room', () => {
    const central = shared.map((changes: Changes) => {
      const [x, y] = [Number(changes['/layouts/0/placement/right/x']), changes['/layouts/0/placement/right/y']];
      const mirrored = { '/layouts/0/placement/left/x': -x, '/layouts/0/placement/left/y': y };
      return { ...changes, ...mirrored, '/speaker/mirrored': true, '/layouts/0/listener/offset': 0 };
    });
    onShared(central, (_, { left, right }) => {
      expect([left.toe, left.tilt, left.lift]).toEqual([right.toe, right.tilt, right.lift]);
    });
  });

  test('keeps what the rules set: the toe, the tilt, the lift, or all of them', () => {
    const over = { '/layouts/0/aim/over': { postures: 'all' } };
    const straight = project({ ...over, '/layouts/0/aim/toe': { rule: 'straight' } });
    expect(placed(straight, 'right')).toMatchObject({ toe: 0, lift: 12 });
    const tilted = project({ ...over, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 5 } });
    expect(placed(tilted, 'right')).toMatchObject({ tilt: radians(5), lift: 12 });
    const lifted = project({ ...over, '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 5 } });
    expect(placed(lifted, 'right')).toMatchObject({ tilt: radians(5) });
    expect(placed(lifted, 'right')?.lift).not.toBeCloseTo(placed(lifted, 'right', { over: null })?.lift ?? 0, 0);
    const set = {
      '/layouts/0/aim/toe': { rule: 'as-set', degrees: 20 },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 5 },
    };
    const all = project({ ...over, ...set });
    expect(placed(all, 'right')).toEqual(placed(all, 'right', { over: null }));
    const behind = project({ ...over, '/layouts/0/aim/toe': { rule: 'behind-head', distance: 300 } });
    expect(placed(behind, 'right')?.toe).toBe(placed(behind, 'right', { over: null })?.toe);
  });

  test('stops at a lift of 0 where less would be better', () => {
    const low = project({
      '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 30 },
      '/layouts/0/aim/over': { postures: 'all' },
      '/layouts/0/stand/lift': undefined,
    });
    expect(placed(low, 'right')?.lift).toBe(0);
  });

  test('chosen postures count, others do not', () => {
    const standing = { name: 'standing', setback: 250, earHeight: 1600 };
    const leaning = { name: 'leaning in', setback: 60, earHeight: 1150 };
    const with_ = (postures: readonly object[], over: object): Pose | null =>
      placed(project({ '/layouts/0/listener/postures': postures, '/layouts/0/aim/over': over }), 'right');
    const chosen = with_([standing, leaning], { postures: ['leaning in'] });
    expect(chosen).toEqual(with_([leaning], { postures: 'all' }));
    expect(chosen).not.toEqual(with_([standing, leaning], { postures: 'all' }));
  });

  test('has no answer where no axis has all heads before it', () => {
    const behind = { name: 'behind the desk', setback: -2500, earHeight: 1180 };
    const of = project({
      '/layouts/0/listener/postures': [behind],
      '/layouts/0/aim/over': { postures: 'all' },
      '/layouts/0/aim/toe': { rule: 'straight' },
    });
    const refused = placeSide(of.speaker, firstLayout(of), 'right');
    expect(refused.ok ? [] : refused.faults.map(faultLine)).toEqual([
      '/aim/over: expected heads that one axis can point at, got one beside or behind the baffle: aim for fewer postures, or turn the loudspeaker (right loudspeaker)',
    ]);
  });
});
