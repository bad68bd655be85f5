import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { headOf } from '$lib/layout/ears.ts';
import { plainText } from '$lib/project/sentence.ts';
import { sideNames, type Layout, type Project } from '$lib/project/project.ts';
import { posturesOf } from '$lib/solution/postures.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { measureOf, type Measure } from '$lib/study/measure.ts';
import { measures, measuresNamed } from '$lib/study/measures.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';
import { withLayouts } from './layouts.ts';
import { inRoom, withGap } from '../rooms.ts';

const cheap = measures.filter(({ needs }) => needs !== 'sheets');

const named = (name: string): Measure => {
  const found = measures.find((measure) => measure.name === name);
  if (!found) throw new Error(`no measure is called ${name}`);
  return found;
};

function solved(of: Project, layout: Layout = firstLayout(of)): Solution {
  const result = solve(of, layout, false);
  if (!result.ok) throw new Error(result.faults.map(({ message }) => plainText(message)).join());
  return result.value;
}

const valueOf = (name: string, solution: Solution, before: Layout | null = null): number | null =>
  measureOf(named(name), solution, before);

/** An angle from its cosine: another way than the code's. */
const between = (a: readonly number[], b: readonly number[]): number => {
  const product = (u: readonly number[], v: readonly number[]) => u.reduce((sum, x, i) => sum + x * (v[i] ?? 0), 0);
  return (Math.acos(product(a, b) / Math.sqrt(product(a, a) * product(b, b))) * 180) / Math.PI;
};

describe('the list of measures', () => {
  test('has each name once, and a sentence and a working for each', () => {
    expect(new Set(measures.map(({ name }) => name)).size).toBe(measures.length);
    for (const { name, says, working, label } of measures) {
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(says).toMatch(/^[A-Z][^]*\.$/);
      expect(working).not.toBe('');
      expect(label).toMatch(/^[A-Z]/);
    }
  });

  test('tells of unknown names at their pointers, with the known ones', () => {
    const result = measuresNamed(['miss', 'beauty', 7], 'aims');
    expect(result).toMatchObject({ ok: false, faults: [{ pointer: '/aims/1' }, { pointer: '/aims/2' }] });
    const [first, second] = result.ok ? [] : result.faults;
    expect(first?.message).toMatch(/^expected the name of a measure \(triangle-error, miss, .*\), got "beauty"$/);
    expect(second?.message).toMatch(/got 7$/);
  });

  test('takes a name given twice once', () => {
    expect(measuresNamed(['miss', 'tilt', 'miss'])).toMatchObject({
      ok: true,
      value: [{ name: 'miss' }, { name: 'tilt' }],
    });
  });
});

describe('each measure', () => {
  test('is a number, or missing where it says that it may be', () => {
    let answered = 0;
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const of = withLayouts(changes);
        const layout = of?.layouts[0];
        const result = of && layout ? solve(of, layout, false) : null;
        if (!result?.ok || !layout) return;
        answered += 1;
        for (const measure of cheap) {
          const value = measureOf(measure, result.value, layout);
          if (value === null) expect(measure.missing, measure.name).toBeDefined();
          else expect(Number.isFinite(value), measure.name).toBe(true);
        }
      }),
      { numRuns: runs(150) },
    );
    expect(answered).toBeGreaterThan(runs(150) / 3);
  });

  test('of the aim equals what the plan says, worked out another way', () => {
    let answered = 0;
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const of = withLayouts(changes);
        const layout = of?.layouts[0];
        const result = of && layout ? solve(of, layout, false) : null;
        if (!result?.ok || !layout) return;
        answered += 1;
        const solution = result.value;
        const { left, right } = solution.sides;
        const [toLeft, toRight] = [left, right].map(({ aimedPoint }) => [
          aimedPoint.x - solution.head.x,
          aimedPoint.y - solution.head.y,
        ]);
        // acos loses half its digits near 0 and 180 degrees.
        expect(valueOf('triangle-error', solution)).toBeCloseTo(Math.abs(between(toLeft ?? [], toRight ?? []) - 60), 4);
        const off = posturesOf(solution).flatMap(({ sides }) => sideNames.map((side) => sides[side].offAxis));
        expect(valueOf('off-axis', solution)).toBeCloseTo(Math.max(...off), 9);
        expect(valueOf('miss', solution)).toBe(Math.max(left.miss, right.miss));
        expect(valueOf('tilt', solution)).toBe(Math.max(left.tilt, right.tilt, -left.tilt, -right.tilt));
        expect(valueOf('lift', solution)).toBe(Math.max(left.lift, right.lift));
        expect(valueOf('toe-difference', solution)).toBe(Math.abs(left.toe - right.toe));
        const far = (side: typeof left): number =>
          Math.hypot(
            side.aimedPoint.x - solution.head.x,
            side.aimedPoint.y - solution.head.y,
            side.aimedPoint.z - solution.head.z,
          );
        expect(valueOf('time-difference', solution)).toBeCloseTo(
          Math.abs((far(left) - far(right)) * 1e-3 * 1e6) / solution.speedOfSound,
          6,
        );
        expect(valueOf('level-difference', solution)).toBeCloseTo(Math.abs(20 * Math.log10(far(left) / far(right))), 9);
        expect(valueOf('move', solution)).toBeNull();
        expect(valueOf('move', solution, layout)).toBe(0);
      }),
      { numRuns: runs(300) },
    );
    expect(answered).toBeGreaterThan(runs(300) / 3);
  });

  test('of what is heard is what the sound and the crossovers of the plan say, to the last digit', () => {
    let [answered, sent] = [0, 0];
    fc.assert(
      fc.property(anyDesk, fc.boolean(), (changes, known) => {
        const of = withLayouts({ ...changes, '/speaker/designPoint': known ? { driver: 'tweeter', distance: 900 } : null }); // prettier-ignore
        const layout = of?.layouts[0];
        const result = of && layout ? solve(of, layout, false) : null;
        if (!result?.ok) return;
        answered += 1;
        const { sound, sides } = result.value;
        const levels = sideNames.flatMap((side) =>
          sound.sides[side].early.flatMap(({ surface, within, level }) =>
            surface === 'desk' && within ? [level] : [],
          ),
        );
        sent += levels.length;
        expect(valueOf('desk-level', result.value)).toBe(levels.length === 0 ? null : Math.max(...levels));
        const losses = sideNames.flatMap((side) =>
          sides[side].crossovers.map(({ sumLevel }) => (sumLevel === null ? null : -sumLevel)),
        );
        if (losses.length > 0 && losses.every((loss) => loss !== null)) {
          expect(valueOf('crossover-loss', result.value)).toBe(Math.max(...losses));
        }
      }),
      { numRuns: runs(100) },
    );
    expect(answered).toBeGreaterThan(runs(100) / 3);
    expect(sent).toBeGreaterThan(answered);
  });

  test('of mirrored layouts is the same', () => {
    let answered = 0;
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const mirrored = {
          ...changes,
          '/speaker/mirrored': true,
          '/layouts/0/listener/offset': -Number(changes['/layouts/0/listener/offset']),
          '/layouts/0/placement/right/x': -Number(changes['/layouts/0/placement/left/x']),
          '/layouts/0/placement/right/y': changes['/layouts/0/placement/left/y'],
          '/layouts/0/placement/left/x': -Number(changes['/layouts/0/placement/right/x']),
          '/layouts/0/placement/left/y': changes['/layouts/0/placement/right/y'],
        };
        const of = withLayouts({ ...changes, '/speaker/mirrored': true }, mirrored);
        const [one, other] = of?.layouts.map((layout) => solve(of, layout, false)) ?? [];
        if (!one?.ok || !other?.ok) return;
        answered += 1;
        for (const measure of cheap) {
          const [a, b] = [measureOf(measure, one.value, null), measureOf(measure, other.value, null)];
          if (a === null || b === null) expect(a, measure.name).toBe(b);
          // The reach of a head is found to 0.1 mm, and notches at the frequencies of a grid.
          else expect(Math.abs(a - b), measure.name).toBeLessThan(measure.name === 'safe-zone' ? 0.2 : 1e-6);
        }
      }),
      { numRuns: runs(100) },
    );
    expect(answered).toBeGreaterThan(runs(100) / 4);
  });
});

describe('held against figures from outside', () => {
  test('a triangle of ITU-R BS.775, 30 degrees to each side at the same distance, has no error', () => {
    // Aimed straight at the head, a driver in the middle of the baffle and flat on the desk: its height over the mark does
    // not lean, so the aimed points stand over the marks.
    const side = 900;
    const of = project({
      '/speaker/drivers/0/offset': 0,
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
      '/layouts/0/listener/setback': side * Math.cos(Math.PI / 6) - 300,
      '/layouts/0/placement/left': { x: -side / 2, y: 300 },
      '/layouts/0/placement/right': { x: side / 2, y: 300 },
    });
    expect(valueOf('triangle-error', solved(of))).toBeCloseTo(0, 9);
  });

  test('a move is the way of each mark and of the head, added up', () => {
    const of = withLayouts(
      {},
      {
        '/layouts/0/placement/left/x': -430 - 3,
        '/layouts/0/placement/left/y': 300 + 4,
        '/layouts/0/placement/right/y': 300 - 7,
        '/layouts/0/listener/earHeight': 1180 + 11,
      },
    );
    const [before, after] = of?.layouts ?? [];
    if (!of || !before || !after) throw new Error('both layouts are sound');
    expect(headOf(after.listener, after.desk).z - headOf(before.listener, before.desk).z).toBe(11);
    expect(valueOf('move', solved(of, after), before)).toBeCloseTo(5 + 7 + 11, 9);
  });

  test('clearance is the gap to the nearest thing, and negative where a cabinet stands in a screen or over an edge', () => {
    const straight = {
      '/layouts/0/aim/toe': { rule: 'straight' },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
      '/layouts/0/monitors': [],
      ...withGap(null),
    };
    // Stands as wide as their layers add up to, under 165 mm wide cabinets 430 mm from the middle of a desk 1400 mm wide.
    const half = solved(project()).stand.right.width / 2;
    expect(half).toBeLessThan(165 / 2);
    const at = (changes: Record<string, unknown>) => valueOf('clearance', solved(project({ ...straight, ...changes })));
    expect(at({})).toBeCloseTo(700 - 430 - half, 6);
    // On narrow stands the cabinet is nearer to the wall than its stand to the desk's edge.
    const narrow = { '/layouts/0/stand/width': 100, '/layouts/0/placement/left/x': -615 };
    const nearLeft = { ...inRoom({ gap: null, left: 702 }), ...narrow };
    expect(at(nearLeft)).toBeCloseTo(702 - 615 - 165 / 2, 6);
    // 205 mm deep cabinets from 300 mm, a wall 12 mm behind them.
    const shallow = { '/layouts/0/desk/outline/depth': 505, ...inRoom({ depth: 505, gap: 12 }) };
    expect(at(shallow)).toBeCloseTo(0, 6);
    const screen = { x: 0, y: 320, width: 615, height: 365, bottom: 0, depth: 40 };
    expect(at({ '/layouts/0/monitors': [screen] })).toBeCloseTo(430 - 165 / 2 - 615 / 2, 6);
    const wide = { ...screen, width: 715 };
    expect(at({ '/layouts/0/monitors': [wide] })).toBeCloseTo(430 - 165 / 2 - 715 / 2, 6);
    expect(at({ '/layouts/0/placement/right/x': 630 })).toBeCloseTo(700 - 630 - half, 6);
  });

  test('clearance is the least of the gaps to screens, walls and edges, each of them a measure', () => {
    let answered = 0;
    let screens = 0;
    fc.assert(
      fc.property(anyDesk, fc.integer({ min: 700, max: 1200 }), (changes, wall) => {
        const of = withLayouts({ ...changes, ...inRoom({ left: wall }) });
        const result = of && solve(of, firstLayout(of), false);
        if (!result?.ok) return;
        answered += 1;
        const gaps = ['screen-gap', 'wall-gap', 'edge-gap'].map((name) => valueOf(name, result.value));
        if (gaps[0] !== null && gaps[0] === valueOf('clearance', result.value)) screens += 1;
        expect(valueOf('clearance', result.value)).toBe(Math.min(...gaps.flatMap((gap) => gap ?? [])));
      }),
      { numRuns: runs(200) },
    );
    expect(answered).toBeGreaterThan(runs(200) / 3);
    expect(screens).toBeGreaterThan(0);
    const none = solved(project({ '/layouts/0/monitors': [], ...withGap(null) }));
    expect([valueOf('screen-gap', none), valueOf('wall-gap', none)]).toEqual([null, null]);
  });

  test('stand height is that of the highest bottom edge: lift, and at 30 degrees half the depth more', () => {
    const as = (degrees: number) => project({ '/layouts/0/aim/tilt': { rule: 'as-set', degrees }, '/layouts/0/stand/lift': 25 }); // prettier-ignore
    const { depth } = as(0).speaker;
    expect(valueOf('stand-height', solved(as(0)))).toBe(25);
    expect(valueOf('stand-height', solved(as(30)))).toBeCloseTo(25 + depth / 2, 9);
    expect(valueOf('stand-height', solved(as(-30)))).toBeCloseTo(25 + depth / 2, 9);
  });

  test('counts faults and cautions as the page does, each once for both loudspeakers', () => {
    const solution = solved(project({ '/layouts/0/stand/friction': 0.2, '/layouts/0/placement/right/x': 431 }));
    const levels = solution.findings.map(({ level }) => level);
    expect(valueOf('cautions', solution)).toBeGreaterThan(0);
    expect(valueOf('cautions', solution)).toBeLessThanOrEqual(levels.filter((level) => level === 'caution').length);
    expect(valueOf('faults', solution)).toBe(0);
  });

  test('sheets are those that the plan nests', () => {
    const solution = solved(project());
    expect(solution.sheets.ok && solution.sheets.value.length).toBe(valueOf('sheets', solution));
    expect(valueOf('wood', solution)).toBe(solution.stand.left.mass + solution.stand.right.mass);
  });

  test('summing loss is unknown without a design point, and none at it', () => {
    expect(valueOf('crossover-loss', solved(project({ '/speaker/designPoint': { rule: 'none' } })))).toBeNull();
    const known = solved(project());
    // Aimed through the tweeter from less far than the design point: little is lost, and never gained in phase.
    expect(valueOf('crossover-loss', known)).toBeGreaterThanOrEqual(0);
    expect(valueOf('crossover-loss', known)).toBeLessThan(3);
    expect(valueOf('crossover-loss', solved(project({ '/speaker/crossovers': [] })))).toBe(0);
  });
});
