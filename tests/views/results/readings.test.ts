import { expect, test } from 'vitest';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { plan } from '$lib/solution/plan.ts';
import { surfaceReflections } from '$lib/solution/leadingReflections.ts';
import { readingsOf } from '$lib/views/results/readings.ts';
import { firstLayout, project } from '../../projects.ts';
import { inRoom } from '../../rooms.ts';

function planOf(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const planned = plan(of, firstLayout(of));
  if (!planned.ok) throw new Error('there is a plan');
  return planned.value;
}

test('readings say what the plan says, one for each surface that answers', () => {
  const demo = planOf({});
  const told = readingsOf(demo);
  const surfaces = surfaceReflections(demo);
  expect(surfaces.length).toBeGreaterThan(1);
  expect(told.map(({ name }) => name)).toEqual(['Aimed', 'Triangle', 'Off the desk', 'Off the wall behind', 'Steady']);
  const [, triangle, desk] = told;
  expect(triangle).toMatchObject({ level: 'caution', figure: `${demo.triangle.angle.toFixed(1)}°` });
  const way = surfaces[0]?.right;
  expect(desk).toMatchObject({ level: null, figure: `${way?.delay.toFixed(2)}\u202fms` });
  // By spreading alone: the level falls by 6.02 dB a doubling of the way (inverse square law).
  const direct = demo.sides.right.drivers.find(({ name }) => name === way?.driver)?.distance ?? NaN;
  const level = 20 * Math.log10(direct / (direct + (way?.pathDifference ?? NaN)));
  expect(desk?.sentence).toContain(`−${Math.abs(level).toFixed(1)}\u202fdB`);
});

test('the safe zone waits for its map, and is drawn when that is there', () => {
  const demo = planOf({});
  const early = readingsOf(demo, { area: null, findings: null }).at(-1);
  expect(early).toMatchObject({ name: 'Safe zone', level: 'waiting', figure: '', picture: null });
  const area = toTheEnd(listeningAreaSteps(demo.project, demo.layout, demo));
  const late = readingsOf(demo, { area, findings: [] }).at(-1);
  const { left, right } = area.box;
  expect(late?.figure).toBe(`± ${Math.min(left.distance, right.distance).toFixed(0)}\u202fmm`);
  expect(late?.picture?.shapes.some(({ kind }) => kind === 'zone')).toBe(true);
});

test('of a surface the louder way is told, as the worse one', () => {
  const uneven = planOf({ '/layouts/0/placement/left': { x: -300, y: 420 } });
  const told = readingsOf(uneven);
  const levels = surfaceReflections(uneven).map(({ left, right }) =>
    Math.max(left?.relativeLevel ?? -Infinity, right?.relativeLevel ?? -Infinity),
  );
  expect(levels.length).toBeGreaterThan(1);
  const said = told.filter(({ name }) => name.startsWith('Off the '));
  said.forEach(({ sentence }, index) =>
    expect(sentence).toContain(`−${Math.abs(levels[index] ?? NaN).toFixed(1)}\u202fdB by spreading`),
  );
});

test('distances that differ are told one by one', () => {
  const [, even] = readingsOf(planOf({}));
  expect(even?.sentence).toMatch(/, each [\d.]+\smm from the head\.$/);
  const [, uneven] = readingsOf(planOf({ '/layouts/0/listener/offset': 60 }));
  expect(uneven?.sentence).toMatch(/, the left \d+\smm, the right \d+\smm from the head\.$/);
});

test('pictures keep within their frame, with walls on both sides', () => {
  const walled = planOf(inRoom({ left: 900, right: 950, ceiling: 2400 }));
  const told = readingsOf(walled);
  expect(told.map(({ name }) => name)).toContain('Off the left wall');
  for (const { picture } of told) {
    if (!picture) throw new Error('each has its picture at once');
    const [left, bottom, right, top] = picture.extent;
    for (const [x, y] of picture.shapes.flatMap(({ points }) => points)) {
      expect(x).toBeGreaterThanOrEqual(left - 1e-9);
      expect(x).toBeLessThanOrEqual(right + 1e-9);
      expect(y).toBeGreaterThanOrEqual(bottom - 1e-9);
      expect(y).toBeLessThanOrEqual(top + 1e-9);
    }
  }
});
