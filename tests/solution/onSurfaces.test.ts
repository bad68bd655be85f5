import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findingText } from '$lib/solution/findings/findingText.ts';
import { markingOut } from '$lib/solution/markingOut.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import type { FindingCode } from '$lib/solution/findings/finding.ts';
import { MILLIMETRES } from '$lib/project/units.ts';
import type { Project } from '$lib/project/project.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

type Changes = Readonly<Record<string, unknown>>;

const planOf = (of: Project): Plan | null => {
  const planned = plan(of, firstLayout(of));
  return planned.ok ? planned.value : null;
};
const findings = (changes: Changes, code: FindingCode) =>
  (planOf(project(changes))?.checks ?? []).filter((one) => one.code === code);

/** A plate to each side of the desk, turned and as high as it comes, with a mark on it. */
const plates = fc.record({
  x: numberFrom(1100, 1500),
  y: numberFrom(0, 500),
  turn: numberFrom(-180, 180),
  height: numberFrom(300, 1100),
  right: numberFrom(-60, 60),
  back: numberFrom(20, 160),
});

type PlateAt = typeof plates extends fc.Arbitrary<infer Value> ? Value : never;

const WIDTH = 320;
const DEPTH = 360;

/** By the general rotation of a place on the plate, clockwise seen from above. */
function placed({ x, y, turn }: PlateAt, right: number, back: number): { x: number; y: number } {
  const angle = (-turn * Math.PI) / 180;
  return {
    x: x + right * Math.cos(angle) - back * Math.sin(angle),
    y: y + right * Math.sin(angle) + back * Math.cos(angle),
  };
}

function changesOf(right: PlateAt, left: PlateAt, mirror: 1 | -1, more: Changes = {}): Changes {
  const [a, b] = mirror === 1 ? ([right, left] as const) : ([left, right] as const);
  const plate = (name: string, at: PlateAt, sign: 1 | -1) => ({
    name,
    on: 'floor',
    x: sign * at.x,
    y: at.y,
    turn: sign * at.turn,
    width: WIDTH,
    depth: DEPTH,
    height: at.height,
    foot: { width: 300, depth: 300, mass: 8 },
  });
  const mark = (at: PlateAt, sign: 1 | -1, on: string) => {
    const { x, y } = placed(at, at.right, at.back);
    return { x: sign * x, y, on };
  };
  return {
    '/layouts/0/room/walls': [],
    '/layouts/0/monitors': [],
    '/layouts/0/listener/setback': 400,
    '/layouts/0/surfaces': [plate('one', a, 1), plate('two', b, -1)],
    '/layouts/0/placement': { right: mark(a, 1, 'one'), left: mark(b, -1, 'two') },
    '/layouts/0/stand/lift': 12,
    ...more,
  };
}

describe('a scene with surfaces', () => {
  test('mirrored as a whole has the mirrored plan', () => {
    let answered = 0;
    fc.assert(
      fc.property(plates, plates, (right, left) => {
        const here = planOf(project(changesOf(right, left, 1)));
        const there = planOf(project(changesOf(right, left, -1)));
        expect(there === null).toBe(here === null);
        if (!here || !there) return;
        answered++;
        for (const key of ['toe', 'tilt', 'lift', 'miss'] as const) {
          expect(there.sides.left[key]).toBeCloseTo(here.sides.right[key], 9);
          expect(there.sides.right[key]).toBeCloseTo(here.sides.left[key], 9);
        }
        const told = ({ checks }: Plan, flip: boolean) =>
          checks
            .filter(({ code }) => !['time-difference', 'level-difference'].includes(code))
            .map(({ code, sides, value }) =>
              [code, flip ? sides.map((one) => (one === 'left' ? 'right' : 'left')) : sides, value.toFixed(6)].join(),
            ) // prettier-ignore
            .sort();
        expect(told(there, true)).toEqual(told(here, false));
        expect(there.balance.left.survives.least).toBeCloseTo(here.balance.right.survives.least, 9);
      }),
      { numRuns: runs(120) },
    );
    expect(answered).toBeGreaterThan(runs(120) / 3);
  });

  test('turned as a whole about the head tilts and stands as before, toed by the turn', () => {
    let answered = 0;
    fc.assert(
      fc.property(plates, plates, numberFrom(-12, 12), (right, left, degrees) => {
        const angle = (-degrees * Math.PI) / 180;
        const turned = (at: PlateAt, sign: 1 | -1): PlateAt => {
          // The left plate is given as its mirror image.
          const a = sign * angle;
          const [x, y] = [at.x, at.y + 400];
          return {
            ...at,
            x: x * Math.cos(a) - y * Math.sin(a),
            y: x * Math.sin(a) + y * Math.cos(a) - 400,
            turn: Math.max(-180, Math.min(180, at.turn + sign * degrees)),
          };
        };
        fc.pre(Math.abs(right.turn + degrees) <= 180 && Math.abs(left.turn - degrees) <= 180);
        const desk = { '/layouts/0/desk/outline': { rule: 'rectangle', width: 400, depth: 300, corner: 0 } };
        const here = planOf(project(changesOf(right, left, 1, desk)));
        const there = planOf(project(changesOf(turned(right, 1), turned(left, -1), 1, desk)));
        if (!here || !there) return;
        answered++;
        for (const [side, sign] of [
          ['right', 1],
          ['left', -1],
        ] as const) {
          expect(there.sides[side].toe).toBeCloseTo(here.sides[side].toe + sign * degrees, 6);
          for (const key of ['tilt', 'lift', 'miss'] as const) {
            expect(there.sides[side][key]).toBeCloseTo(here.sides[side][key], 6);
          }
          expect(there.balance[side].survives.least).toBeCloseTo(here.balance[side].survives.least, 6);
        }
        const over = ({ checks }: Plan) =>
          checks.filter(({ code }) => ['stand-over-edge', 'cabinet-over-edge', 'plate-tips'].includes(code)).map(({ code, sides, value }) => [code, sides, value.toFixed(5)].join()); // prettier-ignore
        expect(over(there)).toEqual(over(here));
      }),
      { numRuns: runs(120) },
    );
    expect(answered).toBeGreaterThan(runs(120) / 4);
  });

  test('marks out the corners of each stand from the edge and the middle of its surface', () => {
    let answered = 0;
    fc.assert(
      fc.property(plates, plates, (right, left) => {
        const made = planOf(project(changesOf(right, left, 1)));
        if (!made) return;
        answered++;
        const rows = markingOut(made).filter(({ side }) => side === 'right');
        expect(rows.map(({ on }) => on)).toEqual(['one', 'one', 'one', 'one']);
        rows.forEach(({ fromCentre, hand, fromEdge }, index) => {
          const { x, y } = placed(right, hand === 'left' ? -fromCentre : fromCentre, fromEdge);
          const [toX, toY] = made.stand.right.footprint[index] ?? [NaN, NaN];
          expect(Math.hypot(x - toX, y - toY)).toBeLessThan(1e-6);
        });
      }),
      { numRuns: runs(60) },
    );
    expect(answered).toBeGreaterThan(runs(60) / 3);
  });
});

const shelf = { name: 'shelf', y: 560, width: 1400, depth: 240, height: 1380 };
const onShelf = (y: number): Changes => ({
  '/layouts/0/surfaces': [shelf],
  '/layouts/0/placement': { left: { x: -430, y, on: 'shelf' }, right: { x: 430, y, on: 'shelf' } },
});

describe('a stand on a shelf', () => {
  test('is checked against the edges of the shelf', () => {
    const [over] = findings(onShelf(570), 'stand-over-edge');
    expect(over?.quantities).toHaveProperty('over');
    expect(over && findingText(over, MILLIMETRES)).toMatch(
      /^The left stand stands \d+(\.\d)?\smm over the front edge of “shelf” and may fall\./,
    );
    // Nothing is over an edge of the desk there.
    const deep = { ...onShelf(580), '/layouts/0/surfaces': [{ ...shelf, y: 520, depth: 300 }] };
    expect(findings(deep, 'stand-over-edge')).toEqual([]);
  });

  test('that leans down asks for a stop, which is silent once there is one', () => {
    const raised = { ...onShelf(600), '/layouts/0/stand/lift': 30 };
    const told = findings(raised, 'no-stop');
    expect(told.map(({ level, sides }) => [level, sides])).toEqual([
      ['caution', ['left']],
      ['caution', ['right']],
    ]);
    const [first] = told;
    expect(first?.value).toBeCloseTo(-(planOf(project(raised))?.sides.left.tilt ?? NaN), 9);
    expect(findings({ ...raised, '/layouts/0/stand/stop': { height: 10, thickness: 6 } }, 'no-stop')).toEqual([]);
    expect(findings({}, 'no-stop')).toEqual([]);
  });
});

describe('a riser or floor stand', () => {
  const pillar = (foot: object | null, x = 1000, height = 800): Changes => ({
    '/layouts/0/room/walls': [],
    '/layouts/0/surfaces': [{ name: 'pillar', on: 'floor', x, y: 300, width: 260, depth: 260, height, foot }],
    '/layouts/0/placement/right': { x, y: 330, on: 'pillar' },
  });

  test('tips where the centre of mass of all comes over an edge of its base', () => {
    const changes = pillar({ width: 200, depth: 200, mass: 6 });
    const made = planOf(project(changes));
    const [told] = findings(changes, 'plate-tips');
    const joint = made?.balance.right.joint;
    const mass = made?.balance.right.mass ?? NaN;
    if (!made || !joint || !told) throw new Error('a narrow base tips');
    // By hand: height of the sum over the floor, and its distance to each edge of a base about (1000, 430).
    const height = ((joint.z + 735) * mass + 400 * 6) / (mass + 6);
    const at = (axis: 'x' | 'y', own: number): number => (joint[axis] * mass + own * 6) / (mass + 6);
    const [x, y] = [at('x', 1000), at('y', 430)];
    const margin = Math.min(x - 900, 1100 - x, y - 330, 530 - y);
    expect(told.value).toBeCloseTo((Math.atan2(margin, height) * 180) / Math.PI, 9);
    expect(findingText(told, MILLIMETRES)).toMatch(/^The floor stand “pillar” tips (forwards|backwards|to the left|to the right) with what stands on it when the floor under it tilts by /); // prettier-ignore
  });

  test('stands on a base wide and heavy enough, and a shelf on a wall is not asked', () => {
    expect(findings(pillar({ width: 450, depth: 450, mass: 20 }), 'plate-tips')).toEqual([]);
    expect(findings({ ...onShelf(600) }, 'plate-tips')).toEqual([]);
  });

  test('says what hangs on a mass that is not given', () => {
    const [told] = findings({ ...pillar({ width: 200, depth: 200, mass: 6 }), '/speaker/mass': null }, 'plate-tips');
    expect(told && findingText(told, MILLIMETRES)).toContain('depending on the cabinet’s mass, which is not given');
  });
});

describe('a cabinet', () => {
  test('in one place with a shelf, or through the desk, is told', () => {
    const shelfIn = { '/layouts/0/surfaces': [{ ...shelf, y: 250, height: 900 }] };
    expect(findings(shelfIn, 'into-surface').map(({ sides, subject }) => [sides, subject])).toEqual([
      [['left'], { surface: 'shelf' }],
      [['right'], { surface: 'shelf' }],
    ]);
    const low = {
      '/layouts/0/surfaces': [{ name: 'low', y: 0, width: 1200, depth: 600, height: 600 }],
      '/layouts/0/placement/right': { x: 430, y: 300, on: 'low' },
    };
    const [through] = findings(low, 'into-surface');
    expect(through && findingText(through, MILLIMETRES)).toMatch(/^The right cabinet and the desk’s top share /);
  });

  test('over or under a shelf is not', () => {
    expect(findings({ '/layouts/0/surfaces': [{ ...shelf, y: 250 }] }, 'into-surface')).toEqual([]);
    expect(findings(onShelf(600), 'into-surface')).toEqual([]);
  });
});
