import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { headMap } from '$lib/acoustics/headMap.ts';
import { distance } from '$lib/geometry/point.ts';
import { hearingOf } from '$lib/solution/headVoices.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { levelLines, levelsFor, roomFor } from '$lib/views/sound/chartScale.ts';
import { ringsWithin } from '$lib/views/sound/contour.ts';
import { hertzText, tickText } from '$lib/views/sound/hertz.ts';
import { pathsOf } from '$lib/views/sound/paths.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { numberFrom } from '../../numbers.ts';
import { firstLayout, project } from '../../projects.ts';

const of = project();
const planned = solve(of, firstLayout(of));
if (!planned.ok) throw new Error('the demo has a plan');
const sound = soundOf(of, firstLayout(of), planned.value);

describe('the ways of a notch', () => {
  test('lead from each driver over the surface to the head, as long as their detour says', () => {
    const ways = pathsOf({ cause: 'desk', monitor: null }, ['left', 'right'], planned.value, sound);
    expect(ways).toHaveLength(4);
    for (const { side, points } of ways) {
      const [from, over, head] = points;
      if (!from || !over || !head) throw new Error('a way over a surface has three points');
      expect(over.z).toBeCloseTo(0, 9);
      expect(head).toEqual(planned.value.head);
      expect(planned.value.sides[side].drivers.map(({ position }) => position)).toContainEqual(from);
    }
  });

  test('of drivers and of the pair are direct', () => {
    const { head, sides } = planned.value;
    const drivers = pathsOf({ cause: 'drivers', monitor: null }, ['right'], planned.value, sound);
    expect(drivers.map(({ points: [from] }) => from && distance(from, head))).toEqual(
      sides.right.drivers.map(({ acousticCentre }) => distance(acousticCentre, head)),
    );
    const pair = pathsOf({ cause: 'pair', monitor: null }, ['left', 'right'], planned.value, sound);
    expect(pair.map(({ points }) => points[0])).toEqual([sides.left.aimedPoint, sides.right.aimedPoint]);
  });

  test('have names', () => {
    expect(causeName('wall:behind', null)).toBe('wall behind');
    expect(causeName('monitor', 1)).toBe('screen 2');
    expect(causeName(null, null)).toBe('several together');
  });
});

describe('a chart', () => {
  test('spans whole tens that hold what it draws, down to its floor', () => {
    fc.assert(
      fc.property(fc.array(numberFrom(-80, 25), { minLength: 1 }), (levels) => {
        const [low, high] = levelsFor([levels]);
        expect([low % 10, high % 10].every((rest) => Math.abs(rest) === 0)).toBe(true);
        for (const level of levels) expect(level <= high && (level >= low || low === -40)).toBe(true);
        const lines = levelLines([low, high]);
        expect([lines[0], lines.at(-1)]).toEqual([low, high]);
      }),
    );
  });

  test('keeps labels apart, the weightiest first', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ at: numberFrom(0, 300), weight: numberFrom(0, 30) })), (places) => {
        const stand = [...roomFor(places, 16)].map((index) => places[index]?.at ?? NaN).sort((a, b) => a - b);
        for (const [i, at] of stand.entries()) if (i > 0) expect(at - (stand[i - 1] ?? 0)).toBeGreaterThanOrEqual(16);
        const heaviest = places.findIndex(({ weight }) => weight === Math.max(...places.map((one) => one.weight)));
        if (heaviest >= 0) expect(roomFor(places, 16).has(heaviest)).toBe(true);
      }),
    );
  });

  test('reads frequencies in three digits', () => {
    expect([hertzText(63), hertzText(999.6), hertzText(2800), hertzText(10_000), hertzText(12_345)]).toEqual([
      '63\u202fHz',
      '1000\u202fHz',
      '2.8\u202fkHz',
      '10\u202fkHz',
      '12.3\u202fkHz',
    ]);
    expect([tickText(31.5), tickText(2000)]).toEqual(['31.5', '2k']);
  });
});

test('a contour runs where the value is at its limit, to within a cell', () => {
  const hear = hearingOf(of, planned.value);
  const { head } = planned.value;
  const map = headMap(hear, { plane: 'plan', at: head.z, across: [-100, 100], up: [head.y - 100, head.y + 100] });
  const rings = ringsWithin(map, map.time.map(Math.abs), 50);
  const cell = 200 / map.columns;
  const inner = rings.flat().filter(([x, y]) => Math.abs(x) < 99 && Math.abs(y - head.y) < 99);
  expect(inner.length).toBeGreaterThan(50);
  for (const [x, y] of inner) {
    const [less, more] = [-cell, cell].map((by) => Math.abs(hear({ x: x + by, y, z: head.z }).time));
    expect(Math.min(less ?? 0, more ?? 0)).toBeLessThanOrEqual(50);
    expect(Math.max(less ?? 0, more ?? 0)).toBeGreaterThanOrEqual(50);
  }
});
