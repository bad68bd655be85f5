import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { missSpread } from '$lib/layout/missSpread.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { solve } from '$lib/solution/solve.ts';
import { fiveLines, lessEven, lessSteady, type Line, type LineName } from '$lib/views/sound/fiveLines.ts';
import {
  aimPicture,
  evenPicture,
  freePicture,
  steadyPicture,
  stepPicture,
  type SmallPicture,
} from '$lib/views/sound/linePictures.ts';
import { firstLayout, project } from '../../projects.ts';
import { runs } from '../../runs.ts';

function heardOf(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('the demo has a solution');
  const plan = solved.value;
  const { sound, findings } = plan;
  return { plan, sound, findings, area: toTheEnd(listeningAreaSteps(of, firstLayout(of), plan)) };
}

const named = (lines: readonly Line[], name: LineName): Line => {
  const line = lines.find((one) => one.name === name);
  if (!line) throw new Error(`there is no line ${name}`);
  return line;
};

/** What is left open of where the axis of the worse side passes the head. */
const band = ({ plan }: ReturnType<typeof heardOf>): string => {
  const side = plan.sides.left.miss > plan.sides.right.miss ? 'left' : 'right';
  const by = missSpread(plan.project.speaker, plan.layout, side, plan.project.sure) ?? NaN;
  return ` ±\u202f${by.toFixed(0)}\u202fmm`;
};

const demo = heardOf({});

describe('five lines', () => {
  const lines = fiveLines(demo);

  test('stand in the order of the page, and each leads somewhere', () => {
    expect(lines.map(({ name }) => name)).toEqual(['Aimed', 'In step', 'Even', 'Free', 'Steady']);
    for (const { figure, sentence, at } of lines) expect([figure, sentence, at]).not.toContain('');
  });

  test('an axis through the head is good; one beside it is as grave as its finding, by the worse side', () => {
    expect(named(lines, 'Aimed')).toMatchObject({ level: 'good', figure: `0\u202fmm${band(demo)}` });
    const aside = heardOf({ '/layouts/0/aim/toe': { rule: 'straight' } });
    const told = named(fiveLines(aside), 'Aimed');
    const miss = Math.max(aside.plan.sides.left.miss, aside.plan.sides.right.miss);
    expect(told.figure).toBe(`${Math.round(miss)}\u202fmm${band(aside)}`);
    expect(told.level).toBe(aside.findings.find(({ code }) => code === 'axis-misses-head')?.level);
  });

  test('drivers of which nobody said where they were lined up are not known, not well', () => {
    const unlined = fiveLines(heardOf({ '/speaker/designPoint': { rule: 'none' } }));
    expect(named(unlined, 'In step')).toMatchObject({ level: 'note', figure: 'not known' });
    const lined = heardOf({});
    const { crossovers } = lined.sound.sides.right;
    expect(named(fiveLines(lined), 'In step').figure).toContain(Math.abs(crossovers[0]?.sum?.level ?? NaN).toFixed(1));
    expect(named(fiveLines(heardOf({ '/speaker/crossovers': [] })), 'In step').level).toBe('good');
  });

  test('the deepest notch of both is told, with its frequency’s cause', () => {
    const deepest = Math.max(
      ...[demo.sound.sides.left, demo.sound.sides.right].flatMap(({ response }) =>
        response.notches.map(({ depth }) => depth),
      ),
    );
    expect(named(lines, 'Even').figure).toBe(`−${deepest.toFixed(0)}\u202fdB`);
    expect(named(lines, 'Even').level).not.toBe('good');
  });

  test('the least way aside is what a head is free by', () => {
    const { left, right } = demo.area.box;
    expect(named(lines, 'Free').figure).toBe(`± ${Math.min(left.distance, right.distance).toFixed(0)}\u202fmm`);
  });

  test('what may slide at 2° of the 10° asked is a caution', () => {
    const { holds } = demo.plan.balance.right.verdict;
    expect(named(lines, 'Steady')).toMatchObject({ level: 'caution', figure: `${holds.least.toFixed(1)}°` });
  });

  test('the side that is worse is told and drawn where they differ', () => {
    const uneven = heardOf({ '/layouts/0/placement/left': { x: -300, y: 420 } });
    const { balance } = uneven.plan;
    const [left, right] = [balance.left.verdict.holds.least, balance.right.verdict.holds.least];
    expect(left).not.toBe(right);
    const side = lessSteady(balance);
    expect(balance[side].verdict.holds.least).toBe(Math.min(left, right));
    expect(named(fiveLines(uneven), 'Steady').figure).toBe(`${Math.min(left, right).toFixed(1)}°`);
    const deepest = (one: 'left' | 'right') =>
      Math.max(...uneven.sound.sides[one].response.notches.map(({ depth }) => depth));
    expect(deepest(lessEven(uneven.sound))).toBe(Math.max(deepest('left'), deepest('right')));
    // Alike, the right one stands for both.
    expect([lessSteady(demo.plan.balance), lessEven(demo.sound)]).toEqual(['right', 'right']);
  });

  test('what has not come waits, and is not called good', () => {
    const early = fiveLines({ plan: demo.plan, sound: null, area: null, findings: null });
    expect(early.map(({ level }) => level)).toEqual(['good', 'waiting', 'waiting', 'waiting', 'caution']);
  });
});

test('small pictures keep within their frame, wherever the head is', () => {
  const within = ({ extent: [left, bottom, right, top], shapes }: SmallPicture): boolean =>
    shapes.length > 0 &&
    shapes.every(({ points }) =>
      points.every(
        ([x, y]) =>
          x >= left - 1e-9 && x <= right + 1e-9 && y >= bottom - 1e-9 && y <= top + 1e-9 && !Number.isNaN(x + y),
      ),
    );
  fc.assert(
    fc.property(
      fc.double({ min: -150, max: 150, noNaN: true }),
      fc.integer({ min: 150, max: 900 }),
      (offset, setback) => {
        const of = project({ '/layouts/0/listener/offset': offset, '/layouts/0/listener/setback': setback });
        const solved = solve(of, firstLayout(of));
        if (!solved.ok) throw new Error('a head anywhere there has a solution');
        const plan = solved.value;
        const { sound } = plan;
        const pictures = [
          aimPicture(plan),
          stepPicture(plan.sides.left.crossovers[0]?.phase ?? 0),
          evenPicture(sound.frequencies, sound.sides.left.response),
          freePicture(plan, demo.area),
          steadyPicture(plan, 'left'),
          steadyPicture(plan, 'right'),
        ];
        for (const picture of pictures) expect(within(picture)).toBe(true);
      },
    ),
    { numRuns: runs(40) },
  );
});
