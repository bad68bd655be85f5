import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';
import { wallAt } from '../rooms.ts';

interface Sizes {
  readonly lying: string;
  readonly mirrored: boolean;
  readonly offset: number;
  readonly left: number;
  readonly right: number;
  readonly screens: readonly { x: number; turn: number; lean: number; curve: number | null }[];
}

/** A scene, or with `way` −1 the same seen in a mirror: cabinets that mirror each other stay so. */
function sceneOf({ lying, mirrored, offset, left, right, screens }: Sizes, way: 1 | -1) {
  const marks = { left: { x: -left, y: 300 }, right: { x: right, y: 310 } };
  const flipped = { left: { x: -right, y: 310 }, right: { x: left, y: 300 } };
  const of = project({
    '/speaker/lying': lying,
    '/speaker/mirrored': mirrored,
    '/layouts/0/listener/offset': 0 - -way * offset,
    '/layouts/0/placement': way === 1 ? marks : flipped,
    '/layouts/0/room/walls': [wallAt('behind', way * 12, 1150), wallAt('beside', way * 80, 1900)],
    '/layouts/0/desk/outline': { rule: 'rectangle', width: 1700, depth: 750 },
    '/layouts/0/monitors': screens.map(({ x, turn, lean, curve }) => ({
      x: way * x,
      y: 520,
      width: 500,
      height: 300,
      bottom: 120,
      depth: 30,
      turn: way * turn,
      lean,
      curve,
    })),
  });
  const layout = firstLayout(of);
  const plan = solve(of, layout, false);
  if (!plan.ok) return null;
  return { plan: plan.value, sound: soundOf(of, layout, plan.value, { bands: false }) };
}

const other = (side: SideName): SideName => (side === 'left' ? 'right' : 'left');

test('a scene seen in a mirror has the mirrored plan, sound and findings: screens turned and bent, cabinets on their side', () => {
  let answered = 0;
  const screen = fc.record({
    x: numberFrom(-60, 60),
    turn: numberFrom(-25, 25),
    lean: numberFrom(-5, 15),
    curve: fc.constantFrom(null, 900, 1500),
  });
  fc.assert(
    fc.property(
      fc.record({
        lying: fc.constantFrom('upright', 'tweeter-inboard', 'tweeter-outboard'),
        mirrored: fc.constant(true),
        offset: numberFrom(-80, 80),
        left: numberFrom(430, 620),
        right: numberFrom(430, 620),
        screens: fc.array(screen, { minLength: 1, maxLength: 2 }),
      }),
      (sizes) => {
        const [scene, mirror] = [sceneOf(sizes, 1), sceneOf(sizes, -1)];
        expect(mirror === null).toBe(scene === null);
        if (!scene || !mirror) return;
        answered++;
        for (const side of sideNames) {
          const [one, two] = [scene.plan.sides[side], mirror.plan.sides[other(side)]];
          for (const key of ['toe', 'tilt', 'lift', 'miss'] as const) expect(two[key]).toBeCloseTo(one[key], 9);
          one.cabinet.forEach(({ x, y, z }, index) => {
            expect(two.cabinet[index]?.x).toBeCloseTo(-x, 9);
            expect([two.cabinet[index]?.y, two.cabinet[index]?.z].map(Number)).toEqual([
              expect.closeTo(y, 9),
              expect.closeTo(z, 9),
            ]);
          });
          const [heard, mirrored] = [scene.sound.sides[side].response, mirror.sound.sides[other(side)].response];
          heard.smooth.forEach((level, index) => expect(mirrored.smooth[index]).toBeCloseTo(level, 6));
          const told = ({ plan }: typeof scene, of: SideName): string[] =>
            plan.checks.flatMap(({ code, sides, value }) =>
              sides.includes(of) ? [`${code} ${value.toFixed(6)}`] : [],
            );
          expect(told(mirror, other(side)).sort()).toEqual(told(scene, side).sort());
        }
      },
    ),
    { numRuns: runs(60) },
  );
  expect(answered).toBeGreaterThan(runs(60) / 2);
});
